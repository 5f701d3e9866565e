/**
 * A part of a page that stands as the build drew it until it is its turn to wake: a page of many such parts is never busy
 * with all of them at once. What is drawn first in the browser, or changes before its turn, is awake at once; so is what a
 * reader touches.
 */
import { type ComponentChild, render } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { takeTurn } from './inTurn.ts';

/** As the library asks for what it is to leave as it stands; one and the same, so that it is never written. */
const AS_IT_STANDS = { __html: '' };

interface Props {
  readonly children: ComponentChild;
}

/**
 * Its children have a tree of their own below it: nothing of a context from above, and no other of these among them. They
 * count as changed where they are another element than before: what is to sleep on keeps its own (`useMemo`).
 */
export function Asleep({ children }: Props) {
  const place = useRef<HTMLDivElement>(null);
  const shown = useRef(children);
  /** Ends its sleep without waking it; null while it is awake. */
  const leave = useRef<(() => void) | null>(null);

  useLayoutEffect(() => {
    const element = place.current;
    if (!element) return;
    // Of what stands there the elements are kept, and all that is another by now is set: what it reads may have changed.
    const wake = () => {
      leave.current = null;
      render(shown.current, element);
    };
    if (element.hasChildNodes()) leave.current = sleep(element, wake);
    else wake();
    return () => {
      leave.current?.();
      render(null, element);
    };
  }, []);
  useLayoutEffect(() => {
    if (shown.current === children) return;
    shown.current = children;
    leave.current?.();
    leave.current = null;
    if (place.current) render(children, place.current);
  });
  return typeof document === 'undefined' ? (
    <div class="asleep">{children}</div>
  ) : (
    <div ref={place} class="asleep" dangerouslySetInnerHTML={AS_IT_STANDS} />
  );
}

const TOUCHES = ['pointerdown', 'focusin'] as const;

/** Wakes it at its turn, or when it is touched. @returns what ends the waiting */
function sleep(element: HTMLElement, wake: () => void): () => void {
  const leave = () => {
    leaveTurn();
    element.removeAttribute('aria-busy');
    for (const name of TOUCHES) element.removeEventListener(name, leaveAndWake, true);
  };
  const leaveAndWake = () => {
    leave();
    wake();
  };
  const leaveTurn = takeTurn(leaveAndWake);
  element.setAttribute('aria-busy', 'true');
  for (const name of TOUCHES) element.addEventListener(name, leaveAndWake, true);
  return leave;
}
