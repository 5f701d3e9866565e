/** What the scripts share: reading a file that was named, and ending a call that cannot be carried out. */
import { readFileSync } from 'node:fs';

/** A call that cannot be carried out, with the exit code it ends in: 1 for the data, 2 for the call. */
export class CallError extends Error {
  readonly exitCode: 1 | 2;
  constructor(message: string, exitCode: 1 | 2) {
    super(message);
    this.exitCode = exitCode;
  }
}

/** Runs a script's work; a CallError becomes its message and exit code. */
export function runScript(work: () => void): void {
  try {
    work();
  } catch (error) {
    if (!(error instanceof CallError)) throw error;
    console.error(error.message);
    process.exitCode = error.exitCode;
  }
}

/** @param what names the file's part in the call, for the message */
export function readText(file: string, what: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : error;
    throw new CallError(`cannot read the ${what} ${file}: ${code}`, 2);
  }
}

/**
 * Options and files of a call.
 *
 * @param parse reads them; what it throws becomes a wrong call, with the usage below it
 */
export function parseCall<Call>(parse: () => Call, usage: string): Call {
  try {
    return parse();
  } catch (error) {
    throw new CallError(`${error instanceof Error ? error.message : error}\n${usage}`, 2);
  }
}
