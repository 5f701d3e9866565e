/**
 * Text of a table by its address, for workers: `own-table:VERSION` in this browser, or one on the site as
 * `/data/arms.csv#VERSION`, with the first characters of its SHA-256. An address never gives two texts.
 */
import { loadText } from './keptTables.ts';
import { ownVersionOf } from './tableInUse.ts';
import { hash } from './version.ts';

/** @throws where the table is not there or is another one, with the reason */
export async function loadTableText(address: string): Promise<string> {
  const own = ownVersionOf(address);
  if (own !== null) {
    const text = await loadText(own);
    if (text === null)
      throw new Error('your own table is no longer stored in this browser; open it again, or go back to the site’s');
    return text;
  }
  const [path, version] = address.split('#');
  const response = await fetch(path);
  if (!response.ok) throw new Error(`the table could not be loaded: ${response.status} ${response.statusText}`);
  const bytes = await response.arrayBuffer();
  if (version && !(await isOfVersion(bytes, version)))
    throw new Error('the site’s table has changed since this page was opened; reload the page');
  return new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
}

/** True too where the browser cannot hash. */
async function isOfVersion(bytes: ArrayBuffer, version: string): Promise<boolean> {
  const found = await hash(bytes);
  return found === null || found.startsWith(version);
}
