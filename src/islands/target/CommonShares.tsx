/** Targets for the shares of growth that are asked for most. */
import { formatTarget } from '../../figures/format.ts';
import type { Target } from '../../model/result.ts';
import { writePercent } from '../../numerics/percent.ts';
import { type Judgement, sayTarget, stateShift } from '../../practice/judgement.ts';
import { LOAD_HEADINGS } from '../../practice/loadNames.ts';
import { Scroll } from '../../ui/Scroll.tsx';
import { TableHead } from '../../ui/TableHead.tsx';
import { Trouble } from '../../ui/Trouble.tsx';
import type { SharedTarget } from '../analysis/targetsByShare.ts';

interface Props {
  /** null until they are known. */
  readonly shares: readonly SharedTarget[] | null;
  readonly problem: string | null;
  readonly onRetry: () => void;
  /** How the lifter judges: the targets are moved to what is to be said. */
  readonly judgement: Judgement;
  /** Of the intervals, 0 to 1. */
  readonly confidence: number;
}

export function CommonShares({ shares, problem, onRetry, judgement, confidence }: Props) {
  return (
    <>
      <h2>Targets for common shares</h2>
      <Trouble what="They could not be worked out" reason={problem} onRetry={onRetry} />
      {!shares && problem === null && <p aria-busy="true">Being worked out …</p>}
      {shares && (
        <Scroll label="Targets for common shares">
          <table>
            <caption>
              {stateShift(judgement) === null
                ? 'Repetitions in reserve that keep'
                : 'Repetitions to say to this lifter, so that what is really left keeps'}{' '}
              a share of the growth at reserve 0: estimate ({writePercent(confidence)} interval).
            </caption>
            <TableHead columns={['Growth kept', ...shares[0].bands.map(({ name }) => LOAD_HEADINGS[name])]} />
            <tbody>
              {shares.map(({ keptShare, bands }) => (
                <tr key={keptShare}>
                  <th scope="row">{writePercent(keptShare)}</th>
                  {bands.map(({ name, target, unreliable }) => (
                    <td key={name}>
                      {showTargetToSay(target, judgement)}
                      {unreliable && '; interval unreliable'}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
    </>
  );
}

function showTargetToSay(target: Target, judgement: Judgement): string {
  const said = sayTarget(target, judgement);
  return said ? formatTarget(said) : (target.reason ?? 'none');
}
