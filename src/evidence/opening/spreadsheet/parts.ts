/** The parts of a spreadsheet file, which is a zip archive of XML: which there are, and one of them, piece by piece. */
import { configure, type Entry, Uint8ArrayReader, ZipReader } from '@zip.js/zip.js/lib/zip-core-external.js';
import { EXPECTED_FILE, SAVE_WITHOUT_PASSWORD } from '../fileKind.ts';
import { FileRefusal } from '../refusal.ts';

// This is a worker already, or a script; and the content policy of pages allows no worker made of text.
configure({ useWebWorkers: false });

/** @param total bytes of the part, as the archive says */
export type Report = (done: number, total: number) => void;

export interface Parts {
  readonly names: ReadonlySet<string>;
  /** Characters of a part, in order; nothing for a part that is not there. @throws FileRefusal */
  readonly read: (name: string, take: (text: string) => void) => Promise<void>;
}

/**
 * Bytes that are unpacked of one file at most. 100,000 rows with all columns filled are some 600 MB of the wordier
 * format (.ods); a small file that unpacks to more was made to clog whoever opens it.
 */
const MOST_UNPACKED = 800_000_000;

/**
 * @param most bytes that all reading together may unpack
 * @param report told, as a part is read, how much of it is done
 * @throws FileRefusal where it is no archive
 */
export async function openParts(
  bytes: Uint8Array,
  most: number = MOST_UNPACKED,
  report: Report = () => {},
): Promise<Parts> {
  const archive = new ZipReader(new Uint8ArrayReader(bytes));
  const entries = new Map<string, Entry>();
  try {
    for await (const entry of archive.getEntriesGenerator()) entries.set(entry.filename, entry);
  } catch {
    throw refuseBroken();
  }
  if ([...entries.values()].some(({ encrypted }) => encrypted)) throw refusePassword();
  let unpacked = 0;
  const read = async (name: string, take: (text: string) => void) => {
    const entry = entries.get(name);
    if (!entry || entry.directory) return;
    const decoder = new TextDecoder('utf-8', { fatal: true });
    // What is thrown in a stream comes out of it as another error.
    let cause: unknown = null;
    let done = 0;
    const write = (piece: Uint8Array) => {
      try {
        unpacked += piece.length;
        if (unpacked > most) throw refuseSize(most);
        take(decoder.decode(piece, { stream: true }));
        done += piece.length;
        report(done, entry.uncompressedSize);
      } catch (error) {
        cause = error;
        throw error;
      }
    };
    try {
      await entry.getData(new WritableStream({ write }), { checkSignature: true });
      take(decoder.decode());
    } catch {
      throw cause instanceof FileRefusal ? cause : refuseBroken();
    }
  };
  return { names: new Set(entries.keys()), read };
}

/** For what is cut short, damaged, or not what its parts say. */
export function refuseBroken(): FileRefusal {
  return new FileRefusal({
    value: 'a spreadsheet file that is damaged or cut short',
    expected: 'a whole one',
    remedy: 'Open it in a spreadsheet program, and save it again as .xlsx, .ods or CSV.',
  });
}

export function refusePassword(): FileRefusal {
  return new FileRefusal({
    value: 'a file with a password',
    expected: EXPECTED_FILE,
    remedy: SAVE_WITHOUT_PASSWORD,
  });
}

function refuseSize(most: number): FileRefusal {
  return new FileRefusal({
    value: 'a spreadsheet file that unpacks to more',
    expected: `at most ${Math.round(most / 1e6)} MB when unpacked`,
    remedy: 'Save its sheet as CSV, and open that.',
  });
}
