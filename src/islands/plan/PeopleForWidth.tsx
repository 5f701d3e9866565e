/** How many people a plan needs for an interval no wider than asked, and what no number of people can do. */

import { upperFirst } from '../../figures/firstLetter.ts';
import { findWidening, stateLimit } from '../../figures/plan/limitWords.ts';
import { formatExpected, type PlanName, stateWidth } from '../../figures/plan/planWords.ts';
import type { PeopleNeeded } from '../../model/plan/peopleNeeded.ts';
import type { Settings } from '../../model/settings.ts';
import { countOf } from '../../numerics/countOf.ts';
import { LOAD_NAMES } from '../../practice/loadNames.ts';
import { Choice } from '../../ui/Choice.tsx';
import { Trouble } from '../../ui/Trouble.tsx';
import { settleNeed } from './need.ts';
import { PlanEntry } from './PlanEntry.tsx';
import type { PlanState } from './plan.state.ts';
import { ASKED_WIDTHS, type NeedAsked } from './planAddress.ts';
import { listPlans } from './plans.ts';

export function PeopleForWidth({ state }: { readonly state: PlanState }) {
  const { need, plans } = state.page.value;
  const all = listPlans(plans);
  const target = settleNeed(state.page.value);
  if (!target) return null;
  const { plan: name, bands, band } = target;
  const found = state.answers.answers.value[name];
  const answer = found?.expectation.bands.find((one) => one.band === band);
  const limit = found?.limits.find((one) => one.band === band)?.target;
  const change = (part: Partial<NeedAsked>) =>
    state.change({ need: need || part.width ? { plan: name, band, width: need?.width ?? 1, ...part } : null });
  const asked = state.people.asked.value;
  return (
    <section class="panel">
      <h2>How many people for a narrower interval?</h2>
      <p>The arms stay where they are, with equally many people in each.</p>
      <div class="row-of-controls">
        {all.length > 1 && (
          <Choice
            id="need-plan"
            label="Plan"
            value={name}
            options={all.map(([one]) => [one, one])}
            onChange={(plan) => change({ plan })}
          />
        )}
        {bands.length > 1 && (
          <Choice
            id="need-band"
            label="Interval of"
            value={band}
            options={bands.map((one) => [one, LOAD_NAMES[one]])}
            onChange={(one) => change({ band: one })}
          />
        )}
        <PlanEntry
          state={state}
          id="need-width"
          label="No wider than, repetitions"
          value={need?.width ?? null}
          {...ASKED_WIDTHS}
          unset="no width is asked for"
          onTake={(width) => change({ width })}
          onEmpty={() => state.change({ need: null })}
        />
      </div>
      <div aria-live="polite" aria-busy={asked !== null && asked.result === null && asked.problem === null}>
        {!need && answer && (
          <p>
            {upperFirst(LOAD_NAMES[band])} with plan {name}: {stateWidth(answer.before)} today,{' '}
            {answer.after ? `${stateWidth(answer.after)} expected` : 'what comes cannot be foreseen'}
            {limit && `, ${stateWidth(limit)} with people without end`}.
            {answer.after && ' Enter the width that is wanted.'}
          </p>
        )}
        {asked && <Trouble what="It could not be worked out" reason={asked.problem} onRetry={state.people.retry} />}
        {asked?.result && <Answer name={name} found={asked.result} settings={state.page.value.settings} />}
      </div>
    </section>
  );
}

interface AnswerProps {
  readonly name: PlanName;
  readonly found: PeopleNeeded;
  readonly settings: Settings;
}

function Answer({ name, found, settings }: AnswerProps) {
  const { band, width, perArm, people, after, limit, isEnoughFromThere, reason } = found;
  const asked = `an interval no wider than ${width} with ${LOAD_NAMES[band]}`;
  return (
    <>
      {perArm === null && <p>{upperFirst(`plan ${name} does not reach ${asked}: ${reason}.`)}</p>}
      {perArm === 0 && <p>{upperFirst(`${asked} stands today already: nobody more is needed.`)}</p>}
      {perArm !== null && perArm > 0 && (
        <p>
          {upperFirst(asked)} is expected {isEnoughFromThere ? 'from' : 'with'}{' '}
          <strong>
            {perArm.toLocaleString('en')} people in each arm, {countOf(people ?? 0, 'person', 'people')} in all
          </strong>
          {after && `: about ${formatExpected(after)}`}.
        </p>
      )}
      {perArm !== null && (limit || isEnoughFromThere === false) && (
        <p class="small">
          {isEnoughFromThere === false &&
            (!limit || findWidening(limit, found) === null) &&
            'Not every larger number that was tried is enough. '}
          {limit && stateLimit(limit, found, settings)}
        </p>
      )}
    </>
  );
}
