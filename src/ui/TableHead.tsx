/** The heads of a table's columns. */

/** A column's name; with “number” where its cells are numbers, which stand to the right. */
export type ColumnHead = string | readonly [name: string, kind: 'number'];

export function TableHead({ columns }: { readonly columns: readonly ColumnHead[] }) {
  return (
    <thead>
      <tr>
        {columns.map((column, i) => {
          const [name, kind] = typeof column === 'string' ? [column, undefined] : column;
          return (
            <th key={i} scope="col" class={kind}>
              {name}
            </th>
          );
        })}
      </tr>
    </thead>
  );
}
