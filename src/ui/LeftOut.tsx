/** Which rows of the table a fit leaves out, by why. */
import type { ExcludedRow } from '../model/result.ts';
import { Scroll } from './Scroll.tsx';
import { TableHead } from './TableHead.tsx';

interface Props {
  /** Rows for the fit, whether or not it could be made. */
  readonly included: number;
  readonly excluded: readonly ExcludedRow[];
}

export function LeftOut({ included, excluded }: Props) {
  return (
    <details>
      <summary id="left-out">
        {included} {included === 1 ? 'row is' : 'rows are'} there for this fit, {excluded.length} of the table{' '}
        {excluded.length === 1 ? 'is' : 'are'} left out: why
      </summary>
      <Scroll label="Rows left out">
        <table>
          <TableHead columns={['Rows', 'Reason', 'Lines of the table']} />
          <tbody>
            {[...linesByReason(excluded)].map(([reason, lines]) => (
              <tr key={reason}>
                <td>{lines.length}</td>
                <td>{reason}</td>
                <td>{lines.join(', ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}

function linesByReason(excluded: readonly ExcludedRow[]): ReadonlyMap<string, readonly number[]> {
  const lines = new Map<string, number[]>();
  for (const { line, reason } of excluded) {
    const known = lines.get(reason);
    if (known) known.push(line);
    else lines.set(reason, [line]);
  }
  return lines;
}
