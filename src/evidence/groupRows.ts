/** Rows of a table by what they share: groups, and rows that repeat an earlier one. */

/** Rows by key; keys in the order in which they first stand, rows in theirs. */
export function groupRows<Row>(rows: Iterable<Row>, keyOf: (row: Row) => string): Map<string, Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  }
  return groups;
}

/** Each row whose key an earlier row has, with the first that has it. */
export function pairWithFirst<Row>(
  rows: readonly Row[],
  keyOf: (row: Row) => string,
): readonly { readonly row: Row; readonly first: Row }[] {
  const known = new Map<string, Row>();
  return rows.flatMap((row) => {
    const key = keyOf(row);
    const first = known.get(key);
    if (first !== undefined) return [{ row, first }];
    known.set(key, row);
    return [];
  });
}
