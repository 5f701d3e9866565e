/** A wide table that scrolls sideways on its own, by touch and by keyboard. */
import type { ComponentChildren } from 'preact';

export function Scroll({ label, children }: { readonly label: string; readonly children: ComponentChildren }) {
  return (
    <section class="scroll" tabIndex={0} aria-label={label}>
      {children}
    </section>
  );
}
