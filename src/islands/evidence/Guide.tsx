/** The guided sequence: one question at a time, each about one change, and at its end what the table taught. */
import { useEffect, useRef } from 'preact/hooks';
import { GuidePanel, type GuideQuestion, Said } from '../../ui/GuidePanel.tsx';
import type { EvidenceState } from './evidence.state.ts';
import { GUESSES, stateTaught } from './guideFindings.ts';
import { GUIDE_STEPS } from './guideSteps.ts';

interface Props {
  readonly state: EvidenceState;
}

export function EvidenceGuide({ state }: Props) {
  const { guide } = state;
  const progress = guide.progress.value;
  if (!progress) return null;
  return (
    <GuidePanel
      name="Change one thing and see what moves"
      step={progress.step}
      count={GUIDE_STEPS.length}
      question={questionOf(state)}
      onGuess={guide.choose}
      onGo={guide.goTo}
      onAgain={guide.again}
      onLeave={guide.leave}
    >
      <Summary state={state} />
    </GuidePanel>
  );
}

/** The button that begins it, where it has not begun. */
export function GuideOpener({ state: { guide } }: Props) {
  const opener = useRef<HTMLButtonElement>(null);
  const isOpen = guide.progress.value !== null;
  const wasOpen = useRef(isOpen);
  // The button that ended the sequence is gone: the focus goes to what stands in its place.
  useEffect(() => {
    if (wasOpen.current && !isOpen) opener.current?.focus();
    wasOpen.current = isOpen;
  }, [isOpen]);
  if (isOpen) return null;
  return (
    <p>
      <button ref={opener} type="button" onClick={guide.begin}>
        Learn by changing one thing: {GUIDE_STEPS.length} questions
      </button>
    </p>
  );
}

function questionOf({ guide, fitting }: EvidenceState): GuideQuestion | null {
  const step = guide.step.value;
  if (!step) return null;
  const found = guide.findings.value[guide.progress.value?.step ?? 0];
  const question = guide.question.value;
  const problem = fitting.problem.value;
  return {
    title: step.title,
    ask: question ?? problem ?? 'Being worked out …',
    choices: question !== null ? GUESSES[step.asks] : [],
    guess: guide.guess.value,
    answer: found ? `${found.came} ${found.lesson}`.trim() : problem && `This could not be fitted: ${problem}.`,
    whyNot: guide.whyNot.value,
  };
}

function Summary({ state: { guide } }: Props) {
  const findings = guide.findings.value;
  return (
    <>
      <ol class="seen">
        {GUIDE_STEPS.map(({ title, asks }, i) => {
          const found = findings[i];
          return (
            <li key={title}>
              <strong>{title}.</strong> {found?.brief ?? 'Not tried.'}
              {found?.wasAsked && (
                <Said choices={GUESSES[asks]} guess={guide.progress.value?.guesses[i]} right={found.right} />
              )}
            </li>
          );
        })}
      </ol>
      <p>{stateTaught(findings)}</p>
    </>
  );
}
