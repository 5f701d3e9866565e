/**
 * A guided sequence beside what it is about: a question before each answer, where one stands, and ways back, on and
 * out. It has no button that does nothing.
 */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

export interface GuideQuestion {
  readonly title: string;
  readonly ask: string;
  readonly choices: readonly { readonly id: string; readonly words: string }[];
  /** What was chosen; empty where the answer was only to be shown, null before. */
  readonly guess: string | null;
  /** Null until the answer is worked out. */
  readonly answer: string | null;
  /** Why this step says nothing here; null where it does. */
  readonly whyNot: string | null;
}

interface Props {
  /** Name of the sequence, for those who hear it. */
  readonly name: string;
  /** Place among the steps, from 0; as many as there are: the summary. */
  readonly step: number;
  readonly count: number;
  /** Null at the summary. */
  readonly question: GuideQuestion | null;
  readonly onGuess: (choice: string) => void;
  readonly onGo: (step: number) => void;
  readonly onAgain: () => void;
  readonly onLeave: () => void;
  /** The summary. */
  readonly children: ComponentChildren;
}

/** Choice of a reader who guesses nothing. */
const SHOW = { id: '', words: 'Just show me' } as const;

export function GuidePanel({ name, step, count, question, onGuess, onGo, onAgain, onLeave, children }: Props) {
  const panel = useRef<HTMLElement>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const answer = useRef<HTMLDivElement>(null);
  const wasAt = useRef(-1);
  // What was pressed is gone: the focus goes to what stands in its place.
  useEffect(() => {
    // A question stands beside its figure, which the page brings into sight; the summary stands by itself.
    if (wasAt.current !== step) {
      panel.current?.scrollTo({ top: 0 });
      heading.current?.focus({ preventScroll: question !== null });
    }
    wasAt.current = step;
  }, [step]);
  const hasAnswer = question !== null && question.guess !== null && question.answer !== null;
  // What is ringed comes into sight, also where it is there only with the answer: under the sheet of a narrow window it
  // may be hidden.
  useEffect(() => {
    const block = matchMedia('(max-width: 60rem)').matches ? 'start' : 'nearest';
    document.querySelector('.ringed')?.scrollIntoView({ block });
  }, [step, question?.guess, question?.ask, hasAnswer]);
  useEffect(() => {
    if (hasAnswer) answer.current?.scrollIntoView({ block: 'nearest' });
  }, [hasAnswer]);
  const guess = (choice: string) => {
    onGuess(choice);
    answer.current?.focus({ preventScroll: true });
  };
  const isOpen = question !== null && question.whyNot === null && question.guess === null;
  return (
    <section ref={panel} class="guide" aria-label={name}>
      <p class="small place">{question ? `Step ${step + 1} of ${count}` : `All ${count} steps`}</p>
      <h2 ref={heading} tabIndex={-1}>
        {question ? question.title : 'What you saw'}
      </h2>
      {question ? <p>{question.whyNot ?? question.ask}</p> : children}
      {isOpen && (
        <div class="choices">
          {[...question.choices, ...(question.choices.length > 0 ? [SHOW] : [])].map(({ id, words }) => (
            <button key={id} type="button" onClick={() => guess(id)}>
              {words}
            </button>
          ))}
        </div>
      )}
      <div ref={answer} tabIndex={-1} class="told" aria-live="polite">
        {question !== null && question.guess !== null && question.whyNot === null && <Answer {...question} />}
      </div>
      <div class="buttons">
        {step > 0 && (
          <button type="button" onClick={() => onGo(step - 1)}>
            Back
          </button>
        )}
        {question !== null && !isOpen && (
          <button type="button" class="onward" onClick={() => onGo(step + 1)}>
            {step + 1 < count ? 'Next' : 'What you saw'}
          </button>
        )}
        {question === null && (
          <button type="button" onClick={onAgain}>
            Begin again
          </button>
        )}
        <button type="button" onClick={onLeave}>
          Leave
        </button>
      </div>
    </section>
  );
}

interface SaidProps extends Pick<GuideQuestion, 'choices'> {
  readonly guess: string | null | undefined;
  /** The choice that came true, null where none did; nothing is said of it where it is not known. */
  readonly right: string | null | undefined;
}

/** In a summary: what was guessed at a step, and whether it came so; empty where nothing was. */
export function Said({ choices, guess, right }: SaidProps) {
  const said = choices.find(({ id }) => id === guess);
  if (!said) return null;
  const came = right === undefined ? '' : said.id === right ? ' So it came.' : ' It came otherwise.';
  return (
    <span class="small">
      {' '}
      You said: {said.words}.{came}
    </span>
  );
}

function Answer({ choices, guess, answer }: GuideQuestion) {
  const said = choices.find(({ id }) => id === guess);
  return (
    <>
      {said && <p class="small">You said: {said.words}.</p>}
      <p class="finding">{answer ?? 'Being worked out …'}</p>
    </>
  );
}
