/**
 * Leaves out of Papa Parse what no page asks of it, which is some third of it: every table is read from a text that is
 * at hand, by a delimiter that is named, in whichever thread asks. Each part that is left out refuses aloud.
 */

/** Functions of the library's source, each declared once at its outermost level but one. */
const LEFT_OUT = [
  'getWorkerBlob',
  'newWorker',
  'mainThreadReceivedMessage',
  'workerThreadReceivedMessage',
  'completeWorker',
  'NetworkStreamer',
  'FileStreamer',
  'ReadableStreamStreamer',
  'DuplexStreamStreamer',
  'guessDelimiter',
];

/** @throws where the source is not as it was when this was written */
export function leaveOutStreams(code: string): string {
  return LEFT_OUT.reduce((rest, name) => {
    const declared = new RegExp(`^(\\t+)function ${name}\\([^)]*\\)\\s*\\{$[\\s\\S]*?^\\1\\}$`, 'gmu');
    const count = rest.match(declared)?.length ?? 0;
    if (count !== 1)
      throw new Error(`Papa Parse: expected one function ${name}, received ${count}: look at leaveOutStreams`);
    return rest.replace(declared, `function ${name}() { throw new Error('${refusal(name)}'); }`);
  }, code);
}

function refusal(name: string): string {
  return `${name} was asked of the reader of CSV, but the browser script reads texts with a known delimiter only`;
}
