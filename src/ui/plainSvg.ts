/**
 * A picture of Plot's as a page holds it: one thing with one description, sized by its frame, and without
 * styles of its own, which a strict content policy forbids (site.css has what they said).
 */

interface Part {
  readonly setAttribute: (name: string, value: string) => void;
  readonly getAttribute: (name: string) => string | null;
  readonly removeAttribute: (name: string) => void;
  readonly remove: () => void;
}

interface Picture extends Part {
  readonly querySelectorAll: (selector: string) => Iterable<Part>;
}

/** Declarations of the root that are attributes of SVG as well. */
const AS_ATTRIBUTES = ['font-size', 'font-family', 'color'] as const;

/** Takes the names off the parts, which Plot gives for pictures that are not one thing. @param svg changed in place */
export function stripNames(svg: Pick<Picture, 'querySelectorAll'>): void {
  for (const part of svg.querySelectorAll('[aria-label]')) part.removeAttribute('aria-label');
}

/** @param svg changed in place, in a browser's document or the build's */
export function makePlain(svg: Picture, alternative: string): void {
  stripNames(svg);
  for (const style of svg.querySelectorAll('style')) style.remove();
  const declared = new Map(
    (svg.getAttribute('style') ?? '').split(';').map((one) => {
      const [name, ...value] = one.split(':');
      return [name.trim(), value.join(':').trim()] as const;
    }),
  );
  svg.removeAttribute('style');
  for (const name of AS_ATTRIBUTES) {
    const value = declared.get(name);
    if (value) svg.setAttribute(name, value);
  }
  svg.removeAttribute('width');
  svg.removeAttribute('height');
  svg.setAttribute('role', 'img');
  svg.setAttribute('aria-label', alternative);
}
