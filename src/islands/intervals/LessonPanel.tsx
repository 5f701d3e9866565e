/** The lesson: one question at a time, and at the end what the reader saw, in the reader's own counts. */
import { GuidePanel, Said } from '../../ui/GuidePanel.tsx';
import type { IntervalsState } from './intervals.state.ts';
import type { LessonStep } from './lessonSteps.ts';

const NOT_DRAWN = 'Not drawn.';

export function LessonPanel({ state }: { readonly state: IntervalsState }) {
  const { lesson } = state;
  const progress = lesson.progress.value;
  if (!progress) return null;
  const now = lesson.now.value;
  const resultsOf = ({ before, after }: LessonStep) => {
    const [first, then] = [after, before].map(({ experiment }) => lesson.found(experiment));
    return first && then ? ([first, then] as const) : null;
  };
  const results = now && resultsOf(now.step);
  return (
    <GuidePanel
      name="Why a straight line’s interval can be wrong"
      step={progress.step}
      count={lesson.count}
      question={
        now && {
          title: now.step.title,
          ask: [now.step.ask, now.step.where].filter(Boolean).join(' '),
          choices: now.step.choices,
          guess: now.guess,
          // Where it was stopped, or could not be drawn, nothing is being worked out any more.
          answer: results ? now.step.answer(...results) : state.running.isRunning.value ? null : NOT_DRAWN,
          whyNot: null,
        }
      }
      onGuess={lesson.guess}
      onGo={lesson.goTo}
      onAgain={lesson.again}
      onLeave={state.leave}
    >
      <ol class="seen">
        {lesson.steps.value.map((step, i) => {
          const came = resultsOf(step);
          return (
            <li key={step.title}>
              <strong>{step.title}.</strong> {came ? step.brief(...came) : NOT_DRAWN}
              <Said choices={step.choices} guess={progress.guesses[i]} right={came ? step.right(...came) : undefined} />
            </li>
          );
        })}
      </ol>
      <p>
        An interval keeps its promise only where what it takes for granted is true. More studies do not mend a wrong
        shape. So this site fits a curve that assumes none, and pays for it in width.
      </p>
    </GuidePanel>
  );
}
