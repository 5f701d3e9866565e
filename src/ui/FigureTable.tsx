/** The numbers of a figure as a table. */
import type { Figure } from '../figures/figure.ts';
import { TableHead } from './TableHead.tsx';

export function FigureTable({ table: { columns, rows } }: Pick<Figure, 'table'>) {
  if (rows.length === 0) return <p>There are none: the caption says why.</p>;
  return (
    <table>
      <TableHead columns={columns} />
      <tbody>
        {rows.map((row, i) => (
          <tr key={i}>
            {row.map((cell, place) => (
              <td key={place}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
