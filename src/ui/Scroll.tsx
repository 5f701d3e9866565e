/** A wide table that scrolls sideways on its own, by touch and by keyboard. */
import type { ComponentChildren } from 'preact';

type Props = {
  readonly children?: ComponentChildren;
  /** Of limited height, too. */
  readonly tall?: boolean;
  readonly id?: string;
} & ({ readonly label: string } | { readonly labelledby: string });

export function Scroll({ children, tall = false, id, ...name }: Props) {
  const named = 'label' in name ? { 'aria-label': name.label } : { 'aria-labelledby': name.labelledby };
  return (
    <section class={tall ? 'scroll tall' : 'scroll'} tabIndex={0} {...(id ? { id } : {})} {...named}>
      {children}
    </section>
  );
}
