/** Pictures that come once the page stands and can be worked with: what draws them is most of its script. */
import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
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
  const { pictures, trouble } = usePictures();
  const rested = useRested(props);
  return pictures ? <pictures.CalendarPicture {...rested} /> : (trouble ?? children);
}

export function LaterWeeks({ children, ...props }: WeeksPictureProps & Drawn) {
  const { pictures, trouble } = usePictures();
  const rested = useRested(props);
  return pictures ? <pictures.WeeksPicture {...rested} /> : (trouble ?? children);
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

/** What draws, or, where it could not be loaded, why, and a way to try again. */
function usePictures() {
  const [pictures, setPictures] = useState(loaded);
  const [problem, setProblem] = useState<string | null>(null);
  const [tries, setTries] = useState(0);
  useEffect(() => {
    if (pictures) return;
    let isWanted = true;
    const load = async () => {
      try {
        loaded = await import('./Pictures.tsx');
        if (isWanted) setPictures(loaded);
      } catch (error) {
        if (isWanted) setProblem(reasonOf(error));
      }
    };
    // After what the reader waits for: the lines, and their first verdicts.
    const rest = setTimeout(() => void load());
    return () => {
      isWanted = false;
      clearTimeout(rest);
    };
  }, [tries]);
  const retry = () => {
    setProblem(null);
    setTries(tries + 1);
  };
  const trouble =
    problem === null ? null : <Trouble what="The picture could not be drawn" reason={problem} onRetry={retry} />;
  return { pictures, trouble };
}
