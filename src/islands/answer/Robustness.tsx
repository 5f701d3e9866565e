/** What would move each band's target, beside one another. */
import { stateRobustness } from '../../figures/findings.ts';
import type { Sweep } from '../../model/checks/sweep.ts';
import type { FullAnalysis } from '../../model/full.ts';
import { LOAD_HEADINGS } from '../../practice/loadNames.ts';

interface Props {
  readonly analysis: FullAnalysis;
  /** null where the combinations of choices were not worked out. */
  readonly sweep: Sweep | null;
}

export function Robustness({ analysis, sweep }: Props) {
  const found = (['light', 'heavy'] as const)
    .map((name) => ({ name, sentences: stateRobustness(name, analysis, sweep) }))
    .filter(({ sentences }) => sentences.length > 0);
  if (found.length === 0) return <p>There is no target that a study, a curve or another choice could move.</p>;
  return (
    <div class="pair">
      {found.map(({ name, sentences }) => (
        <section key={name}>
          <h3>{LOAD_HEADINGS[name]}</h3>
          <ul>
            {sentences.map((change) => (
              <li key={change}>{change}</li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}
