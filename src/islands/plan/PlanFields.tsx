/** One plan to be filled in: design, arms, and what is assumed of the measure. */
import { upperFirst } from '../../figures/firstLetter.ts';
import { DESIGN_WORDS, type PlanName } from '../../figures/plan/planWords.ts';
import {
  LEAST_PEOPLE,
  MOST_ARMS,
  MOST_PEOPLE,
  MOST_RESERVE,
  type PlannedArm,
  type PlannedStudy,
} from '../../model/plan/plannedStudy.ts';
import { LOAD_NAMES } from '../../practice/loadNames.ts';
import { Choice } from '../../ui/Choice.tsx';
import { AssumedFields } from './AssumedFields.tsx';
import { PlanEntry } from './PlanEntry.tsx';
import type { PlanState } from './plan.state.ts';
import { addArm, changeArm, changeDesign, changePeople, removeArm } from './plans.ts';

interface Props {
  readonly state: PlanState;
  readonly name: PlanName;
  readonly plan: PlannedStudy;
}

/** Limits of the entries, as the model checks them. */
const PEOPLE = { from: LEAST_PEOPLE, to: MOST_PEOPLE } as const;
const RESERVE = { from: 0, to: MOST_RESERVE } as const;
const LOAD = { from: 2, to: 100 } as const;
/** Load of an arm for which the reader says one, per cent of 1RM, until they do. */
const FIRST_LOAD = 75;
const OWN_LOAD = 'own';

export function PlanFields({ state, name, plan }: Props) {
  const { bands } = state.answers.facts.value;
  const set = (next: PlannedStudy) => state.setPlan(name, next);
  const isWithin = plan.design === 'within-person';
  return (
    <form class="controls" aria-label={`Plan ${name}`} onSubmit={(event) => event.preventDefault()}>
      <Choice
        id={`${name}-design`}
        label="Design"
        value={plan.design}
        options={[
          ['parallel', 'parallel'],
          ['within-person', 'within-person'],
        ]}
        // Below the words, since what a narrow list cannot show of them is cut off.
        help={`${upperFirst(DESIGN_WORDS[plan.design])}.`}
        onChange={(design) => set(changeDesign(plan, design))}
      />
      {isWithin && plan.arms.length > 0 && (
        <PlanEntry
          state={state}
          id={`${name}-people`}
          label="People, each in every arm"
          value={plan.arms[0].people}
          {...PEOPLE}
          isWhole
          onTake={(people) => set(changePeople(plan, people))}
        />
      )}
      {plan.arms.map((arm, i) => (
        <fieldset key={i} class="arm">
          <legend>Arm {i + 1}</legend>
          <ArmLoad state={state} id={`${name}-${i}`} arm={arm} onChange={(load) => set(changeArm(plan, i, { load }))} />
          <PlanEntry
            state={state}
            id={`${name}-${i}-reserve`}
            label="In reserve"
            value={arm.reserve}
            {...RESERVE}
            onTake={(reserve) => set(changeArm(plan, i, { reserve }))}
          />
          {!isWithin && (
            <PlanEntry
              state={state}
              id={`${name}-${i}-people`}
              label="People"
              value={arm.people}
              {...PEOPLE}
              isWhole
              onTake={(people) => set(changeArm(plan, i, { people }))}
            />
          )}
          {plan.arms.length > 1 && (
            <button
              type="button"
              class="inline"
              onClick={() => {
                set(removeArm(plan, i));
                // The button is gone with its arm: the focus goes to what comes next.
                document.getElementById(`${name}-add`)?.focus();
              }}
            >
              Remove
              <span class="unseen">
                {' '}
                arm {i + 1} of plan {name}
              </span>
            </button>
          )}
        </fieldset>
      ))}
      <p class="buttons">
        <button
          type="button"
          id={`${name}-add`}
          aria-disabled={plan.arms.length >= MOST_ARMS}
          onClick={() => plan.arms.length < MOST_ARMS && set(addArm(plan, bands[0]?.name ?? 'all'))}
        >
          Add an arm<span class="unseen"> to plan {name}</span>
        </button>
        {plan.arms.length >= MOST_ARMS && <span class="small">{MOST_ARMS} arms at most.</span>}
      </p>
      <AssumedFields state={state} name={name} plan={plan} />
    </form>
  );
}

interface ArmLoadProps {
  readonly state: PlanState;
  readonly id: string;
  readonly arm: PlannedArm;
  readonly onChange: (load: PlannedArm['load']) => void;
}

/** A band of loads, or a load that is said. */
function ArmLoad({ state, id, arm: { load }, onChange }: ArmLoadProps) {
  const bands = state.answers.facts.value.bands.map(({ name }) => name);
  const names = typeof load === 'number' || bands.includes(load) ? bands : [...bands, load];
  return (
    <>
      <Choice
        id={`${id}-load`}
        label="Load"
        value={typeof load === 'number' ? OWN_LOAD : load}
        options={[...names.map((one) => [one, LOAD_NAMES[one]] as const), [OWN_LOAD, 'a load in % of 1RM'] as const]}
        onChange={(chosen) => onChange(chosen === OWN_LOAD ? FIRST_LOAD : chosen)}
      />
      {typeof load === 'number' && (
        <PlanEntry state={state} id={`${id}-percent`} label="% of 1RM" value={load} {...LOAD} onTake={onChange} />
      )}
    </>
  );
}
