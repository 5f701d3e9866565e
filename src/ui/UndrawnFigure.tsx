/** Stands for a figure that has nothing to draw: its title, and why. */
import type { Figure } from '../figures/figure.ts';

interface Props {
  readonly figure: Pick<Figure, 'title' | 'caption'>;
  /** Level of the title among the page's headings. */
  readonly heading?: 'h2' | 'h3';
}

export function UndrawnFigure({ figure, heading: Title = 'h2' }: Props) {
  return (
    <section>
      <Title class="figure-title">{figure.title}</Title>
      <p>{figure.caption}</p>
    </section>
  );
}
