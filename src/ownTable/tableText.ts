/** Text of a table by its address: the reader's own from this browser, or one on the site. For workers. */
import { OWN_TABLE } from './ownTable.ts';
import { loadOwnTable } from './ownTableStore.ts';

/** @throws where the table is not there, with the reason */
export async function loadTableText(address: string): Promise<string> {
  if (address === OWN_TABLE) {
    const own = await loadOwnTable();
    if (!own)
      throw new Error('your own table is no longer stored in this browser; open it again, or go back to the site’s');
    return own.text;
  }
  const response = await fetch(address);
  if (!response.ok) throw new Error(`the table could not be loaded: ${response.status} ${response.statusText}`);
  return await response.text();
}
