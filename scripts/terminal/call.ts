/** What the scripts share: reading a call and the files it names, and ending one that cannot be carried out. */
import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { type ParseArgsConfig, parseArgs } from 'node:util';
import { formatProblem, type Problem } from '../../src/evidence/problem.ts';

/** A call that cannot be carried out, with the exit code it ends in: 1 for the data, 2 for the call. */
export class CallError extends Error {
  readonly exitCode: 1 | 2;
  constructor(message: string, exitCode: 1 | 2) {
    super(message);
    this.exitCode = exitCode;
  }
}

type Options = NonNullable<ParseArgsConfig['options']>;
type Token = {
  readonly kind: string;
  readonly name?: string | undefined;
  readonly value?: string | boolean | undefined;
};

/** How a script is called. */
interface CallForm<Given extends Options> {
  /** What `--help` prints; its first line stands below the message of a wrong call. */
  readonly help: string;
  readonly options?: Given;
  /** How many files a call names, as a list of the numbers allowed and in words that complete “expected …”; none by default. */
  readonly files?: { readonly counts: readonly number[]; readonly expected: string };
}

type Values<Given extends Options> = ReturnType<typeof parseArgs<{ options: Given; allowPositionals: true }>>['values'];

/** Reads the call and does a script's work with it; a CallError becomes its message and exit code. */
export function runScript<Given extends Options>(
  form: CallForm<Given>,
  work: (call: { readonly values: Values<Given>; readonly files: readonly string[] }) => void | Promise<void>,
): void {
  const words = process.argv.slice(2);
  if (words.includes('--help') || words.includes('-h')) {
    console.log(form.help);
    return;
  }
  const run = async () => work(readCall(words, form));
  run().catch((error: unknown) => {
    if (!(error instanceof CallError)) throw error;
    console.error(error.message);
    process.exitCode = error.exitCode;
  });
}

function readCall<Given extends Options>(words: string[], { help, options, files }: CallForm<Given>) {
  const { counts, expected } = files ?? { counts: [0], expected: 'no file' };
  const refuse = (message: string) => new CallError(`${message}\n${help.split('\n', 1)[0]}`, 2);
  const taken = options ?? ({} as Given);
  let call: ReturnType<typeof parseArgs<{ options: Given; allowPositionals: true; tokens: true }>>;
  try {
    call = parseArgs({ args: words, allowPositionals: true, options: taken, tokens: true });
  } catch (error) {
    throw refuse(error instanceof Error ? stateParseError(error.message) : String(error));
  }
  const twice = findRepeated(call.tokens, taken);
  if (twice) throw refuse(`expected --${twice.name} once, received ${twice.values.join(' and ')}`);
  const named = call.positionals;
  if (!counts.includes(named.length)) {
    throw refuse(`expected ${expected}, received ${named.length}${named.length > 0 ? `: ${named.join(', ')}` : ''}`);
  }
  return { values: call.values, files: named };
}

/** What Node says, without its advice for files whose name begins with a hyphen. */
function stateParseError(message: string): string {
  return message.split(/\. (?=To specify a positional)/u, 1)[0].replaceAll('\n', ' ');
}

/** The first option that takes one value and was given several, of which all but the last would be lost. */
function findRepeated(tokens: readonly Token[], options: Options): { name: string; values: string[] } | null {
  for (const [name, { type, multiple }] of Object.entries(options)) {
    if (type !== 'string' || multiple) continue;
    const values = tokens.flatMap((one) => (one.kind === 'option' && one.name === name ? [String(one.value)] : []));
    if (values.length > 1) return { name, values };
  }
  return null;
}

/**
 * Text of a file, without a byte-order mark; bytes that are no UTF-8 become U+FFFD.
 *
 * @param what names the file's part in the call, for the message
 */
export function readText(file: string, what: string): string {
  try {
    return new TextDecoder().decode(readFileSync(file));
  } catch (error) {
    throw new CallError(`cannot read the ${what} ${file}: ${stateFileError(error, file)}`, 2);
  }
}

/** Why a file could not be read or written, with where it was looked for. */
export function stateFileError(error: unknown, file: string, use: 'read' | 'write' = 'read'): string {
  const code = error instanceof Error && 'code' in error ? error.code : error;
  if (code === 'ENOENT' && use === 'write') return `expected a folder for it, found none at ${dirname(resolve(file))}`;
  if (code === 'ENOENT') return `expected a file, found nothing at ${resolve(file)}`;
  if (code === 'EISDIR') return `expected a file, found a folder at ${resolve(file)}`;
  return String(code);
}

/** A problem with the file it is in: “arms.csv: line 17, `reserve_reps`: expected …”. */
export function placeProblem(problem: Problem): string {
  return `${problem.file}: ${formatProblem(problem)}`;
}

/** Problems with their files, a line each. */
export function listProblems(problems: readonly Problem[]): string {
  return problems.map(placeProblem).join('\n');
}
