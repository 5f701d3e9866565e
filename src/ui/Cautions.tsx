/** What to mind before anyone trains by an answer; stands with the answer, never on another page. */

interface Props {
  readonly cautions: readonly string[];
  readonly class?: string;
  readonly heading?: string;
}

export function Cautions({ cautions, class: more, heading = 'Before anyone trains by this' }: Props) {
  return (
    <aside class={more ? `cautions ${more}` : 'cautions'} aria-label="Cautions">
      <h2>{heading}</h2>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </aside>
  );
}
