/** What is drawn and fitted: the truth, how many studies and where, the analyst's curves, and other tables. */
import { LAYOUT_WORDS, TRUTH_WORDS } from '../../figures/coverageCells.ts';
import { upperFirst } from '../../figures/firstLetter.ts';
import { nameCurve } from '../../figures/simulation/words.ts';
import { CURVES, type Curve } from '../../model/settings.ts';
import { LAYOUTS, type Layout } from '../../model/simulation.ts';
import { ALL_TRUTHS, type TruthName } from '../../model/truths.ts';
import { Choice } from '../../ui/Choice.tsx';
import { TABLES } from './experiment.ts';
import type { IntervalsState } from './intervals.state.ts';

/** Numbers of studies that calibration has measured. */
const STUDIES = [4, 8, 15, 30] as const;

export function ExperimentControls({ state }: { readonly state: IntervalsState }) {
  const { truth, studies, reserves, fit, against, seed } = state.experiment.value;
  const counts = [...new Set([...STUDIES, studies])].sort((a, b) => a - b).map(String);
  const others = (chosen: string) => CURVES.filter((curve) => curve !== chosen);
  return (
    <form class="controls" aria-label="What is drawn" onSubmit={(event) => event.preventDefault()}>
      <Choice
        id="truth"
        label="The truth"
        value={truth}
        options={(Object.keys(ALL_TRUTHS) as TruthName[]).map((name) => [
          name,
          `${upperFirst(name)}: ${TRUTH_WORDS[name]}`,
        ])}
        help="How growth really depends on the repetitions left. Tables are drawn around it."
        onChange={(name) => state.change({ truth: name })}
      />
      <Choice
        id="studies"
        label="Studies in a table"
        value={String(studies)}
        options={counts.map((count) => [count, count])}
        help="More make intervals shorter, not truer."
        onChange={(count) => state.change({ studies: Number(count) })}
      />
      <Choice
        id="reserves"
        label="Repetitions left in those studies"
        value={reserves}
        options={(Object.keys(LAYOUTS) as Layout[]).map((layout) => [layout, LAYOUT_WORDS[layout]])}
        help="Each study has one arm at reserve 0; the others are spread so."
        onChange={(layout) => state.change({ reserves: layout })}
      />
      <Choice
        id="fit"
        label="Curve that the analyst fits"
        value={fit}
        options={CURVES.map((curve) => [curve, nameCurve(curve)])}
        // The two that are compared change places where the other was chosen.
        onChange={(curve) => state.change({ fit: curve, ...(curve === against ? { against: fit } : {}) })}
      />
      <Choice
        id="against"
        label="Beside it, on the same tables"
        value={against}
        options={[...others(fit).map((curve): [Curve, string] => [curve, nameCurve(curve)]), ['none', 'no other']]}
        onChange={(curve) => state.change({ against: curve })}
      />
      <div class="buttons">
        <button type="button" onClick={state.drawAgain}>
          Draw {TABLES} other tables
        </button>
        <span class="small">Draw number {seed}; the address keeps it.</span>
      </div>
    </form>
  );
}
