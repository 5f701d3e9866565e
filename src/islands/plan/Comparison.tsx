/** Intervals before and after, a figure a band, and all plans in one table. */
import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import type { BandName } from '../../model/result.ts';
import { FigureView } from '../../ui/FigureView.tsx';
import { bandFigures } from './bandFigures.ts';
import type { PlanState } from './plan.state.ts';

interface Props {
  readonly state: PlanState;
  /** The figures as the build drew them. */
  readonly drawn: Readonly<Partial<Record<BandName, ComponentChildren>>>;
}

export function Comparison({ state: { answers }, drawn }: Props) {
  const facts = answers.facts.value;
  const found = answers.answers.value;
  const figures = useMemo(() => bandFigures(facts, found), [facts, found]);
  if (figures.length === 0) return null;
  return (
    <section>
      <h2>Before and after</h2>
      <div class="pair">
        {figures.map(({ band, figure }) => (
          <FigureView key={band} figure={figure} heading="h3">
            {drawn[band]}
          </FigureView>
        ))}
      </div>
    </section>
  );
}
