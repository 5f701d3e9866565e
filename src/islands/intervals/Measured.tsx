/** What calibration measured before, with many more tables of the same kind, beside what the reader's run came to. */
import { formatNumber } from '../../figures/format.ts';
import { nameCurve } from '../../figures/simulation/words.ts';
import { Scroll } from '../../ui/Scroll.tsx';
import { curvesOf, TABLES } from './experiment.ts';
import { resultOf, writeResult } from './results.ts';
import type { Run } from './running.state.ts';

/** Share held by a curve in each measured cell, by truth, studies and reserves. */
export interface MeasuredCells {
  /** Tables of a cell. */
  readonly tables: number;
  readonly held: Readonly<Record<string, Readonly<Record<string, number | null>>>>;
}

export function keyOf({ truth, studies, reserves }: Pick<Run['experiment'], 'truth' | 'studies' | 'reserves'>): string {
  return `${truth}, ${studies}, ${reserves}`;
}

export function Measured({ run, measured }: { readonly run: Run; readonly measured: MeasuredCells }) {
  if (run.answers.length < TABLES) return null;
  const result = resultOf(run);
  const cell = measured.held[keyOf(run.experiment)];
  return (
    <Scroll label="Your count beside the calibration’s">
      <table>
        <caption>
          Your {TABLES} tables, draw number {run.experiment.seed}, beside the calibration’s{' '}
          {measured.tables.toLocaleString('en')} of the same kind. In brackets is what {TABLES} tables leave open: 1
          time in 20 the long run lies outside.
        </caption>
        <thead>
          <tr>
            <th scope="col">Curve</th>
            <th scope="col">Your intervals that hold the truth</th>
            <th scope="col">The calibration’s</th>
          </tr>
        </thead>
        <tbody>
          {curvesOf(run.experiment).map((curve) => {
            const own = result[curve];
            const before = cell?.[curve];
            return (
              <tr key={curve}>
                <td>{nameCurve(curve)}</td>
                <td>{own ? writeResult(own) : 'none'}</td>
                <td>
                  {before === undefined || before === null ? 'not measured' : `${formatNumber(100 * before, 1)}\u00a0%`}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </Scroll>
  );
}
