/** The settings of a call: those of a file, completed with the defaults. */
import * as z from 'zod';
import { type Settings, settingsSchema } from '../src/model/settings.ts';
import { CallError, readText } from './call.ts';

/** Settings of the file, completed with defaults; an outcome in the call goes before the file's. */
export function readSettings(file: string | undefined, outcome?: string): Settings {
  let written: unknown = {};
  if (file !== undefined) {
    try {
      written = JSON.parse(readText(file, 'settings file'));
    } catch (error) {
      if (error instanceof SyntaxError) throw new CallError(`${file}: expected JSON, ${error.message}`, 1);
      throw error;
    }
  }
  const chosen = outcome !== undefined && isRecord(written) ? { ...written, outcome } : written;
  const parsed = settingsSchema.safeParse(chosen);
  if (!parsed.success) {
    throw new CallError(
      `${file ?? '--outcome'}: settings not accepted\n${z.prettifyError(parsed.error)}`,
      file ? 1 : 2,
    );
  }
  return parsed.data;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
