/** Pictures that come once the page stands and can be worked with: what draws them is most of its script. */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { reasonOf } from '../../ui/reasonOf.ts';
import { Trouble } from '../../ui/Trouble.tsx';
import type { CalendarPictureProps, WeeksPictureProps } from './Pictures.tsx';

type Pictures = typeof import('./Pictures.tsx');

let loaded: Pictures | null = null;

interface Drawn {
  /** The picture as the build drew it, until this browser draws; nothing where it would be of another programme. */
  readonly children: ComponentChildren;
}

export function LaterCalendar({ children, ...props }: CalendarPictureProps & Drawn) {
  // The build's is the same picture: until another is wanted, nothing has to be drawn.
  const { pictures, trouble } = usePictures(!children);
  const rested = useRested(props);
  return pictures && !children ? <pictures.CalendarPicture {...rested} /> : children || trouble;
}

export function LaterWeeks({ children, ...props }: WeeksPictureProps & Drawn) {
  const place = useRef<HTMLDivElement>(null);
  // The build's is the same, but not as wide as its place here.
  const { pictures, trouble } = usePictures(useNear(place) || !children);
  const rested = useRested(props);
  return <div ref={place}>{pictures ? <pictures.WeeksPicture {...rested} /> : children || trouble}</div>;
}

/** Milliseconds without a change after which a picture is drawn anew: while somebody types, verdicts come first. */
const REST = 150;

/** What was given last, once nothing else has come for a while. */
function useRested<Given extends object>(given: Given): Given {
  const [rested, setRested] = useState(given);
  useEffect(() => {
    const rest = setTimeout(() => setRested(given), REST);
    return () => clearTimeout(rest);
  }, Object.values(given));
  return rested;
}

/**
 * What draws, or, where it could not be loaded, why, and a way to try again.
 *
 * @param isWanted false as long as what the build drew does; whoever begins to write will want others soon
 */
function usePictures(isWanted: boolean) {
  const [pictures, setPictures] = useState(loaded);
  const [problem, setProblem] = useState<string | null>(null);
  const [tries, setTries] = useState(0);
  useEffect(() => {
    if (pictures) return;
    let isHere = true;
    const load = async () => {
      try {
        loaded = await import('./Pictures.tsx');
        if (isHere) setPictures(loaded);
      } catch (error) {
        if (isHere) setProblem(reasonOf(error));
      }
    };
    // After what the reader waits for: the lines, and their first verdicts.
    const later = () => {
      rest = setTimeout(() => void load());
    };
    let rest: ReturnType<typeof setTimeout> | undefined;
    if (isWanted) later();
    else document.addEventListener('focusin', later, { once: true });
    return () => {
      isHere = false;
      clearTimeout(rest);
      document.removeEventListener('focusin', later);
    };
  }, [isWanted, pictures, tries]);
  const retry = () => {
    setProblem(null);
    setTries(tries + 1);
  };
  const trouble = <Trouble what="The picture could not be drawn" reason={problem} onRetry={retry} />;
  return { pictures, trouble };
}

/** True once it has come as near to what is in sight as the window is high. */
function useNear(place: { readonly current: Element | null }): boolean {
  const [isNear, setNear] = useState(false);
  useEffect(() => {
    if (!place.current) return;
    const observer = new IntersectionObserver(
      (seen) => {
        if (seen.some(({ isIntersecting }) => isIntersecting)) setNear(true);
      },
      { rootMargin: '100% 0px' },
    );
    observer.observe(place.current);
    return () => observer.disconnect();
  }, []);
  return isNear;
}
