/** What one plan is expected to do, band by band. */

import { upperFirst } from '../../figures/firstLetter.ts';
import { formatWhole } from '../../figures/format.ts';
import { OUTCOME_WORDS } from '../../figures/outcomeWords.ts';
import { stateLimitWidth } from '../../figures/plan/limitWords.ts';
import {
  DESIGN_WORDS,
  formatChance,
  formatExpected,
  formatKept,
  listWholes,
  PER_PEOPLE,
  type PlanName,
  stateArm,
  stateNarrowing,
  statePerPeople,
  stateWidth,
} from '../../figures/plan/planWords.ts';
import type { PlanAnswer } from '../../model/plan/planAnswer.ts';
import type { BandExpectation } from '../../model/plan/planExpectation.ts';
import { countOf } from '../../numerics/countOf.ts';
import { writePercent } from '../../numerics/percent.ts';
import { LOAD_HEADINGS } from '../../practice/loadNames.ts';
import { TableHead } from '../../ui/TableHead.tsx';
import { WithInterval } from '../../ui/WithInterval.tsx';
import type { PlanState } from './plan.state.ts';

interface Props {
  readonly state: PlanState;
  readonly name: PlanName;
  readonly answer: PlanAnswer;
}

export function PlanResult({ state, name, answer: { plan, expectation, limits } }: Props) {
  const { problems, people, bands } = expectation;
  if (problems.length > 0)
    return (
      <div class="problem">
        <p>This plan cannot be worked out:</p>
        <ul>
          {problems.map((problem) => (
            <li key={problem}>{problem}.</li>
          ))}
        </ul>
      </div>
    );
  return (
    <div class="plan-result">
      <p class="big">{countOf(people, 'person', 'people')} in all</p>
      <p class="on-paper">
        {upperFirst(plan.design)} ({DESIGN_WORDS[plan.design]}): {plan.arms.map(stateArm).join('; ') || 'no arms'}.
      </p>
      {bands.map((band) => (
        <BandResult
          key={band.band}
          state={state}
          name={name}
          band={band}
          limit={limits.find((one) => one.band === band.band)?.target ?? null}
        />
      ))}
    </div>
  );
}

interface BandProps {
  readonly state: PlanState;
  readonly name: PlanName;
  readonly band: BandExpectation;
  readonly limit: PlanAnswer['limits'][number]['target'];
}

function BandResult({ state, name, band, limit }: BandProps) {
  const { before, after, arms, reason } = band;
  const heading = LOAD_HEADINGS[band.band];
  if (arms === 0)
    return (
      <section aria-label={`Plan ${name}, ${heading}`}>
        <h3>{heading}</h3>
        <p class="small">
          No arm of this plan: it stays as it is today, {formatExpected(before)}.
          {after === null && reason && ` ${upperFirst(reason)}.`}
        </p>
      </section>
    );
  return (
    <section aria-label={`Plan ${name}, ${heading}`}>
      <h3>{heading}</h3>
      <dl class="facts apart">
        <dt>Today</dt>
        <dd>
          {formatExpected(before)}
          {before.point !== null && `, ${stateWidth(before)}`}
        </dd>
        <dt>Expected</dt>
        <dd>
          {after === null ? 'cannot be foreseen' : <strong>{formatExpected(after)}</strong>}
          {after?.point != null && `, ${stateWidth(after)}`}
        </dd>
        {after && (
          <>
            <dt>Gain</dt>
            <dd>
              {stateNarrowing(band.narrowing, before, after)}
              {band.narrowingPerPerson !== null &&
                `; ${statePerPeople(band.narrowingPerPerson)} for every ${PER_PEOPLE} people`}
            </dd>
          </>
        )}
        {limit && (
          <>
            <dt>Without end of people</dt>
            <dd>{stateLimitWidth(limit, band)}</dd>
          </>
        )}
        {after && band.chanceOfMove !== null && (
          <>
            <dt>Whole repetitions told</dt>
            <dd>
              {formatWhole(band.today.whole)} today; another number in {formatChance(band.chanceOfMove)} outcomes (
              {listWholes(band.wholes)})
            </dd>
          </>
        )}
      </dl>
      {reason && <p class="small">{upperFirst(reason)}.</p>}
      {after && band.kept.length > 0 && <Kept state={state} band={band} />}
    </section>
  );
}

/** Growth kept at 1, 2 and 3 in reserve, today and then. */
function Kept({ state, band: { kept } }: Pick<BandProps, 'state' | 'band'>) {
  const { outcome, confidence } = state.answers.facts.value.settings;
  return (
    <table class="numbers">
      <caption>
        Share of the {OUTCOME_WORDS[outcome].effect} at reserve 0 that is kept ({writePercent(confidence)} interval).
      </caption>
      <TableHead columns={['In reserve', 'Today', 'Expected']} />
      <tbody>
        {kept.map(({ before, after }) => (
          <tr key={before.reserve}>
            <th scope="row">{before.reserve}</th>
            <td>
              <WithInterval text={formatKept(before)} />
            </td>
            <td>
              <WithInterval text={formatKept(after)} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
