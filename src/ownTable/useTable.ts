/** The table in use, for the islands of a page. */
import { useEffect, useState } from 'preact/hooks';
import { addressIn, followTable, type TableInUse, tableNow } from './tableInUse.ts';

interface Read {
  /** Address of the table, for workers. */
  readonly address: string;
  /** False until it is known whether there is an own table: the site's stands there, and nothing is asked. */
  readonly isKnown: boolean;
  readonly table: TableInUse;
}

/** @param shipped address of the site's table */
export function useTable(shipped: string): Read {
  // Where it is the site's, which the build has drawn, the island can begin at once.
  const [table, setTable] = useState(() => (tableNow()?.kind === 'site' ? tableNow() : null));
  useEffect(() => followTable(setTable), []);
  const now: TableInUse = table ?? { kind: 'site' };
  return { address: addressIn(now, shipped), isKnown: table !== null, table: now };
}

/** Connects a state for as long as it is shown, once it is known which table it is of. */
export function useConnection({ connect }: { readonly connect: () => () => void }, isKnown: boolean): void {
  useEffect(() => (isKnown ? connect() : undefined), [connect, isKnown]);
}
