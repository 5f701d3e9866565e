/**
 * A part of a page that stands as the build drew it until it is its turn to wake: a page of many such parts is never busy
 * with all of them at once. What is drawn first in the browser, or changes before its turn, is awake at once; so is what a
 * reader touches.
 */
import { type ComponentChild, hydrate, render } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { takeTurn } from './inTurn.ts';

/** As the library asks for what it is to leave as it stands; one and the same, so that it is never written. */
const AS_IT_STANDS = { __html: '' };

interface Props {
  readonly children: ComponentChild;
}

/**
 * Its children have a tree of their own below it, and nothing of a context that stands above. They count as changed where
 * they are another element than before: what is to sleep on keeps its own (`useMemo`).
 */
export function Asleep({ children }: Props) {
  const place = useRef<HTMLDivElement>(null);
  /** What it showed last; undefined before the first time. */
  const last = useRef<ComponentChild>(undefined);
  /** Wakes it as it was drawn; does nothing once it is awake. */
  const wake = useRef(() => {});

  useLayoutEffect(() => {
    const element = place.current;
    if (!element) return;
    const end = element.hasChildNodes() ? sleep(element, children, wake) : () => {};
    return () => {
      end();
      render(null, element);
    };
  }, []);
  useLayoutEffect(() => {
    const element = place.current;
    const isSame = last.current === children;
    const stands = last.current === undefined && element?.hasChildNodes();
    last.current = children;
    if (!element || isSame || stands) return;
    wake.current();
    render(children, element);
  });
  return typeof document === 'undefined' ? (
    <div class="asleep">{children}</div>
  ) : (
    <div ref={place} class="asleep" dangerouslySetInnerHTML={AS_IT_STANDS} />
  );
}

const TOUCHES = ['pointerdown', 'focusin'] as const;

/**
 * @param drawn what the build drew there
 * @param wake set to what wakes it before its turn
 * @returns what ends the waiting
 */
function sleep(element: HTMLElement, drawn: ComponentChild, wake: { current: () => void }): () => void {
  const leave = () => {
    leaveTurn();
    for (const name of TOUCHES) element.removeEventListener(name, awake, true);
    wake.current = () => {};
  };
  const awake = () => {
    leave();
    hydrate(drawn, element);
  };
  const leaveTurn = takeTurn(awake);
  for (const name of TOUCHES) element.addEventListener(name, awake, true);
  wake.current = awake;
  return leave;
}
