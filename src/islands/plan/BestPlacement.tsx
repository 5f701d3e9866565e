/** Where two or three arms should stand: every way is tried, the best ones can be taken over. */

import { upperFirst } from '../../figures/firstLetter.ts';
import {
  formatWidth,
  PER_PEOPLE,
  type PlanName,
  stateArms,
  statePerPeople,
  stateWidth,
} from '../../figures/plan/planWords.ts';
import type { Placement, PlacementSearch } from '../../model/plan/bestPlacement.ts';
import { LEAST_PEOPLE, MOST_PEOPLE } from '../../model/plan/plannedStudy.ts';
import type { BandName } from '../../model/result.ts';
import { countOf } from '../../numerics/countOf.ts';
import { LOAD_NAMES } from '../../practice/loadNames.ts';
import { Choice } from '../../ui/Choice.tsx';
import { Trouble } from '../../ui/Trouble.tsx';
import { PlanEntry } from './PlanEntry.tsx';
import type { PlanState } from './plan.state.ts';
import type { PlaceAsked } from './planAddress.ts';
import { listPlans, nextName } from './plans.ts';

const BOTH = 'both';

export function BestPlacement({ state }: { readonly state: PlanState }) {
  const { facts, isBuilt } = state.answers;
  const { place, settings } = state.page.value;
  const bands = facts.value.bands.map(({ name }) => name);
  const now: PlaceAsked = place ?? state.built.place;
  const asked = state.placement.asked.value;
  const isOfBuild = place === null && isBuilt(settings);
  const change = (part: Partial<PlaceAsked>) => state.change({ place: { ...now, ...part } });
  const used = state.used.value;
  const found = isOfBuild ? state.built.search : (asked?.result ?? null);
  return (
    <section class="panel">
      <h2>Where should the arms stand?</h2>
      <p>
        Every way to place the arms on whole repetitions in reserve up to the largest studied is tried, with the people
        shared equally.
      </p>
      <div class="row-of-controls">
        <Choice
          id="place-design"
          label="Design"
          value={now.design}
          options={[
            ['parallel', 'parallel'],
            ['within-person', 'within-person'],
          ]}
          onChange={(design) => change({ design })}
        />
        <Choice
          id="place-arms"
          label="Arms"
          value={String(now.arms)}
          options={[
            ['2', 'two'],
            ['3', 'three'],
          ]}
          onChange={(arms) => change({ arms: arms === '2' ? 2 : 3 })}
        />
        {bands.length > 1 && (
          <Choice
            id="place-band"
            label="To narrow the interval of"
            value={now.band ?? BOTH}
            options={[[BOTH, 'both bands of loads'], ...bands.map((band) => [band, LOAD_NAMES[band]] as const)]}
            onChange={(band) => change({ band: band === BOTH ? null : (band as BandName) })}
          />
        )}
        <PlanEntry
          state={state}
          id="place-people"
          label="People in all"
          value={now.people}
          from={now.design === 'parallel' ? now.arms * LEAST_PEOPLE : LEAST_PEOPLE}
          to={MOST_PEOPLE}
          isWhole
          onTake={(people) => change({ people })}
        />
      </div>
      <div aria-live="polite" aria-busy={place !== null && asked?.result === null && asked.problem === null}>
        {!isOfBuild && place === null && (
          <p class="buttons">
            <button type="button" onClick={() => change({})}>
              Search in this table
            </button>
          </p>
        )}
        {place !== null && asked && asked.result === null && asked.problem === null && (
          <p>All ways are being tried …</p>
        )}
        {asked && <Trouble what="It could not be searched" reason={asked.problem} onRetry={state.placement.retry} />}
        {found && <Found state={state} search={found} asked={now} />}
        {used && (
          <p>
            Plan {used} has these arms now: <a href={`#plan-${used}`}>see it</a>.
          </p>
        )}
      </div>
    </section>
  );
}

interface FoundProps {
  readonly state: PlanState;
  readonly search: PlacementSearch;
  readonly asked: PlaceAsked;
}

function Found({ state, search: { best, tried, unsaid, reason }, asked: { design, arms } }: FoundProps) {
  const { both, most } = state.built.agreement;
  if (reason !== null) return <p>{upperFirst(reason)}.</p>;
  return (
    <>
      <p class="small">
        The best of {tried.toLocaleString('en')} ways to place {arms === 2 ? 'two' : 'three'} arms of a {design} study
        {unsaid > 0 && `; of ${unsaid.toLocaleString('en')} of them no width could be said`}. Close ones are as good: of{' '}
        {both.toLocaleString('en')} planned studies that were simulated too, none had an expected width that was off by
        more than {most}.
      </p>
      <ol class="placements">
        {best.map((one, i) => (
          <Way key={i} state={state} placement={one} />
        ))}
      </ol>
    </>
  );
}

function Way({ state, placement }: { readonly state: PlanState; readonly placement: Placement }) {
  const { plan, people, bands, narrowingPerPerson } = placement;
  const { plans } = state.page.value;
  const free = nextName(plans);
  const names: readonly PlanName[] = [...listPlans(plans).map(([name]) => name), ...(free ? [free] : [])];
  return (
    <li>
      <p>
        <strong>{upperFirst(stateArms(plan.arms))}</strong>, {countOf(people, 'person', 'people')}:{' '}
        {bands
          .map(({ band, before, after }) =>
            before.width === null || after.width === null
              ? `${LOAD_NAMES[band]} ${stateWidth(after)}`
              : `${LOAD_NAMES[band]} ${formatWidth(before.width)} wide today, about ${formatWidth(after.width)} then`,
          )
          .join('; ')}
        . {statePerPeople(narrowingPerPerson)} for every {PER_PEOPLE} people.
      </p>
      <p class="buttons">
        {names.map((name) => (
          <button key={name} type="button" class="inline" onClick={() => state.take(name, plan)}>
            Use as plan {name}
            <span class="unseen">: {stateArms(plan.arms)}</span>
          </button>
        ))}
      </p>
    </li>
  );
}
