/** Facts with their names, as a list of descriptions. */
import type { ComponentChildren } from 'preact';

interface Props {
  readonly facts: readonly (readonly [name: string, value: ComponentChildren])[];
  readonly class?: string;
}

export function Facts({ facts, class: name = 'facts' }: Props) {
  return (
    <dl class={name}>
      {facts.flatMap(([fact, value]) => [<dt key={fact}>{fact}</dt>, <dd key={`${fact} value`}>{value}</dd>])}
    </dl>
  );
}
