/** One version of a programme: its lines to be edited, what is asked of them, and what they come to. */
import type { ComponentChildren } from 'preact';
import { listFirst, nameLines } from '../../numerics/countOf.ts';
import { isBlock } from '../../practice/programme/checkedWeeks.ts';
import { writeDay } from '../../practice/programme/columns.ts';
import type { CheckedLine } from '../../practice/programme/line.ts';
import type { AskedExercise } from '../../practice/programme/read.ts';
import { Asleep } from '../../ui/Asleep.tsx';
import { ProblemList } from '../../ui/ProblemList.tsx';
import { ProgrammeAsked } from './Asked.tsx';
import { ProgrammeText } from './AsText.tsx';
import type { VersionName } from './editing.state.ts';
import { ProgrammeLines } from './Lines.tsx';
import type { ProgrammeState } from './programme.state.ts';
import { SharingDoor } from './SharingDoor.tsx';
import { ProgrammeSheet } from './Sheet.tsx';
import { ProgrammeSums } from './Sums.tsx';

interface Props {
  readonly state: ProgrammeState;
  readonly which: VersionName;
  readonly name: string;
  /** Its calendar as the build drew the worked example’s. */
  readonly drawn: ComponentChildren;
}

export function ProgrammeVersion({ state, which, name, drawn }: Props) {
  const list = state.draft.value[which];
  if (!list) return null;
  const heading = `version-${which}`;
  const { checking } = state;
  const { report, by } = checking.made.value;
  const version = checking.isShown.value ? report[which] : null;
  const lineReports = state.reports.value[which];
  const numbers = new Map(list.lines.map(({ id }, i) => [id, i + 1]));
  /** Number that a line of the checked text has in the editor. */
  const numberOf = (line: number) => numbers.get(lineReports?.idOf.get(line) ?? 0) ?? 0;
  const unsafe = version?.lines.filter((line) => line.unsafe) ?? [];
  const reported = [...(lineReports?.byId ?? [])];
  const open = reported.flatMap(([id, { problems }]) => (problems.length > 0 ? (numbers.get(id) ?? []) : []));
  const isOfBlock = isBlock(version?.check?.weeks ?? []);
  const sheet = version && (version.check || version.lines.length > 0) && (
    <Asleep>
      <ProgrammeSheet
        lines={version.lines}
        left={reported.flatMap(([id, { checked }]) => (checked ? [] : (numbers.get(id) ?? [])))}
        name={name}
        numberOf={numberOf}
        keptShare={by.settings.keptShare}
      />
    </Asleep>
  );
  return (
    <section aria-label={name} class={isOfBlock ? 'of-block' : undefined}>
      <h2 id={heading} tabIndex={-1}>
        {name}
      </h2>
      {unsafe.length > 0 && <Unsafe lines={unsafe} numberOf={numberOf} />}
      <ProgrammeLines state={state} which={which} name={name} list={list} />
      <ProgrammeText state={state} which={which} name={name} />
      {version && lineReports && lineReports.others.length > 0 && (
        <ProblemList heading="Of the lines as a whole" problems={lineReports.others} />
      )}
      {version?.asked.map((one) => (
        <ProgrammeAsked
          key={one.name}
          state={state}
          asked={{ ...one, lines: one.lines.map(numberOf) }}
          heading={heading}
        />
      ))}
      {version && open.length + version.asked.length > 0 && (
        <p class="entry small">
          Sums wait until {sayOpen(open, version.asked)}: of part of a programme they would be of another one.
        </p>
      )}
      {!version?.check && sheet}
      {version?.check && (
        <>
          {!isOfBlock && sheet}
          <Asleep>
            <ProgrammeSums state={state} check={version.check} name={name} numberOf={numberOf} drawn={drawn} />
          </Asleep>
          {isOfBlock && sheet}
        </>
      )}
      {list.lines.length > 0 && <SharingDoor state={state} which={which} name={name} numberOf={numberOf} />}
      {which === 'first' ? (
        list.lines.length > 0 &&
        !state.draft.value.second && (
          <p class="entry buttons">
            <button type="button" id="compare" onClick={state.compare}>
              Compare with a second version
            </button>
          </p>
        )
      ) : (
        <p class="entry buttons">
          <button type="button" onClick={state.dropSecond}>
            Drop version two
          </button>
        </p>
      )}
    </section>
  );
}

/** Lines, and exercises, that a sentence names. */
const MOST_NAMED = 8;

/** “lines 1, 2 are whole and “sled drag” is described” */
function sayOpen(open: readonly number[], asked: readonly AskedExercise[]): string {
  const names = asked.map(({ name }) => `“${name}”`);
  return [
    ...(open.length > 0 ? [`${nameLines(open, MOST_NAMED)} ${open.length === 1 ? 'is' : 'are'} whole`] : []),
    ...(names.length > 0 ? [`${listFirst(names, MOST_NAMED)} ${names.length === 1 ? 'is' : 'are'} described`] : []),
  ].join(' and ');
}

interface UnsafeProps {
  readonly lines: readonly CheckedLine[];
  readonly numberOf: (line: number) => number;
}

function Unsafe({ lines, numberOf }: UnsafeProps) {
  return (
    <p class="problem">
      <strong>Not safe as written:</strong>{' '}
      {lines
        .map(({ line }) => `${line.exercise.name} on ${writeDay(line.day)} (line ${numberOf(line.line)})`)
        .join('; ')}
      . An exercise that can pin the lifter is never taken to failure without a spotter or safety arms.
    </p>
  );
}
