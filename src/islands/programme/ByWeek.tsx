/** The weeks of a programme on one picture; both versions where there are two. */
import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import { isBlock } from '../../practice/programme/checkedWeeks.ts';
import { LaterWeeks } from './LaterPictures.tsx';
import type { ProgrammeState } from './programme.state.ts';

interface Props {
  readonly state: ProgrammeState;
  /** As the build drew the worked example’s. */
  readonly drawn: ComponentChildren;
}

export function ProgrammeByWeek({ state, drawn }: Props) {
  const { report, by, of } = state.checking.made.value;
  const [first, second] = [report.first.check, report.second?.check ?? null];
  const versions = useMemo(
    () =>
      [
        { name: 'version one', check: first },
        { name: 'version two', check: second },
      ].flatMap(({ name, check }) => (check ? [{ name, weeks: check.weeks }] : [])),
    [first, second],
  );
  if (versions.length === 0) return null;
  const isOfBlock = versions.some(({ weeks }) => isBlock(weeks));
  return (
    <section class={isOfBlock ? 'by-week of-block' : 'by-week'} aria-label="By week">
      <h2>{isOfBlock ? 'Growth and recovery by week' : 'Growth and recovery of the week'}</h2>
      <LaterWeeks versions={versions} by={by} calendar={of.input.calendar}>
        {drawn}
      </LaterWeeks>
    </section>
  );
}
