/** The settings of a call: those of a file, completed with the defaults. */
import { formatExpectation } from '../../src/evidence/problem.ts';
import { OUTCOMES } from '../../src/evidence/vocabulary.ts';
import '../../src/evidence/zodMessages.ts';
import { defaultSettings, type Settings, settingsSchema } from '../../src/model/settings.ts';
import { CallError, readText } from './call.ts';

/** For the help of a script that takes the option. */
export const SETTINGS_HELP = `  --settings FILE.json  any part of the settings, for example {"keptShare": 0.95, "curve": "spline"}
                        (src/model/settings.ts describes each); the rest stands at its default`;

type Issue = NonNullable<ReturnType<typeof settingsSchema.safeParse>['error']>['issues'][number];

/** Settings of the file, completed with defaults; an outcome in the call goes before the file's. */
export function readSettings(file: string | undefined, outcome?: string): Settings {
  const written = file === undefined ? {} : readJson(file);
  const chosen = outcome !== undefined && isRecord(written) ? { ...written, outcome } : written;
  const parsed = settingsSchema.safeParse(chosen);
  if (parsed.success) return parsed.data;
  const { issues } = parsed.error;
  if (outcome !== undefined && issues.some(({ path }) => path[0] === 'outcome')) {
    throw new CallError(
      `--outcome: ${formatExpectation({ value: outcome, expected: `one of ${OUTCOMES.join(', ')}`, remedy: null })}`,
      2,
    );
  }
  const problems = issues.flatMap((issue) => stateIssue(issue, chosen));
  throw new CallError(problems.map((problem) => `${file}: ${problem}`).join('\n'), 1);
}

function readJson(file: string): unknown {
  const text = readText(file, 'settings file');
  try {
    return JSON.parse(text);
  } catch (error) {
    const why = error instanceof SyntaxError ? error.message : String(error);
    throw new CallError(`${file}: expected JSON such as {"keptShare": 0.95}. The reader says: ${why}.`, 1);
  }
}

/** What is wrong with a setting: “`keptShare`: expected number to be <1, received “90”.”; a line for each unknown name. */
function stateIssue(issue: Issue, written: unknown): string[] {
  const place = issue.path.length > 0 ? `\`${issue.path.map(String).join('.')}\`: ` : '';
  const describe = (value: string, expected: string, remedy: string | null = null) =>
    `${place}${formatExpectation({ value, expected, remedy })}`;
  if (issue.code === 'unrecognized_keys') {
    const known = Object.keys(Object(valueAt(defaultSettings, issue.path))).join(', ');
    return issue.keys.map((key) => describe(key, `one of ${known}`));
  }
  const value = valueAt(written, issue.path);
  // The library's message ends in the kind of what it received, not in what it was.
  const [, expected = issue.message] = /expected (.*?)(?:, received .*)?$/u.exec(issue.message) ?? [];
  const words = expected.replaceAll('"', '').replaceAll('|', ', ');
  // Marks stand round every value received, so that a number in a text would look like the number itself.
  if (
    typeof value === 'string' &&
    issue.code === 'invalid_type' &&
    /^\s*(?:[-+\d.]+(?:e[-+]?\d+)?|true|false)\s*$/iu.test(value)
  ) {
    return [describe(JSON.stringify(value), words, 'Write it without quotation marks.')];
  }
  return [describe(writeValue(value), words)];
}

/** A value as it was written; JSON has no word for the number that 1e999 is read as. */
function writeValue(value: unknown): string {
  if (typeof value === 'string') return value;
  if (typeof value === 'number' && !Number.isFinite(value)) return 'a number too large to be held';
  return JSON.stringify(value) ?? '';
}

/** What stands at a path of a value, or at the end of as much of the path as there is. */
function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce(
    (inner, key) => (typeof inner === 'object' && inner !== null ? Reflect.get(inner, key) : inner),
    value,
  );
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
