/** Numbers of a row of the table, each with how it was obtained. */
import type { Recovered } from '../evidence/recover.ts';
import { formatSignificant } from '../figures/format.ts';
import { Scroll } from './Scroll.tsx';
import { TableHead } from './TableHead.tsx';

/** Significant digits that a statistic of the table is shown with. */
export const STATISTIC_DIGITS = 4;

interface Props {
  readonly label: string;
  readonly numbers: readonly (Recovered & {
    /** Where the formula is published. */
    readonly source?: string | null;
  })[];
}

export function NumbersTable({ label, numbers }: Props) {
  return (
    <Scroll label={label}>
      <table class="numbers">
        <TableHead columns={['Number', ['Value', 'number'], 'How it was obtained']} />
        <tbody>
          {numbers.map(({ quantity, value, how, source }) => (
            <tr key={`${quantity} ${how}`}>
              <th scope="row">{quantity}</th>
              <td class="number">{formatSignificant(value, STATISTIC_DIGITS)}</td>
              <td>
                {how}
                {source && <span class="source">{source}</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}
