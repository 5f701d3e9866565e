/** State of what is pasted or opened: how it was understood, shown before any of it comes into the programme. */
import { batch, computed, type ReadonlySignal, signal } from '@preact/signals';
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import { countOf } from '../../numerics/countOf.ts';
import { readDraft } from '../../practice/programme/draft.ts';
import { addLine, NO_LINES, replaceLines } from '../../practice/programme/edit.ts';
import type { NotRead, WrittenProgramme } from '../../practice/programme/written/understood.ts';
import { reasonOf } from '../../ui/reasonOf.ts';
import type { WorkerCalls } from '../../ui/workerCalls.ts';
import type { Editing, VersionName } from './editing.state.ts';
import { keepTaken, readTaken } from './keptProgramme.ts';
import { type Chosen, choose as chooseFor, isAnswered, offerLine } from './offered.ts';
import { placeProblems } from './problemsOfSets.ts';
import type { ProgrammeOperations } from './programmeWorker.ts';
import { addTaken, type Taken } from './taken.ts';

/** Milliseconds without a keystroke after which a text is read. */
const REST = 150;

export function createOpening(
  editing: Editing,
  exercises: ReadonlySignal<readonly NamedExercise[]>,
  worker: WorkerCalls<ProgrammeOperations>,
) {
  const isOpen = signal(false);
  const text = signal('');
  const written = signal<WrittenProgramme | null>(null);
  const chosen = signal<readonly Chosen[]>([]);
  /** Why the last step could not be done. */
  const problem = signal<string | null>(null);
  /** How the last file was read, where that is not plain. */
  const note = signal('');
  const isReading = signal(false);
  /** What was taken without being written, for the lines that came in. */
  const taken = signal<Taken>(new Map());
  const offered = computed(() => (written.value?.lines ?? []).map((line) => offerLine(line, chosen.value)));
  const placed = computed(() => placeProblems(written.value ?? { lines: [], notRead: [] }));
  /** A question that was answered is not asked any more. */
  const isOpenProblem = (one: NotRead) => !isAnswered(one, chosen.value);
  let cancelAsked = () => {};
  let rest: ReturnType<typeof setTimeout> | undefined;
  /** Number of the file that was opened last: one that takes longer to read must not come after it. */
  let lastOpened = 0;

  const read = (whole: string) => {
    cancelAsked = worker.ask(
      'understand',
      { text: whole, exercises: exercises.peek() },
      {
        take: (found) =>
          batch(() => {
            isReading.value = false;
            written.value = found;
          }),
        fail: (reason) =>
          batch(() => {
            isReading.value = false;
            problem.value = `The text could not be read: ${reason}`;
          }),
      },
    );
  };
  const setText = (whole: string, wait = REST) =>
    batch(() => {
      cancelAsked();
      clearTimeout(rest);
      text.value = whole;
      problem.value = null;
      note.value = '';
      chosen.value = [];
      isReading.value = whole.trim() !== '';
      if (isReading.value) rest = setTimeout(() => read(whole), wait);
      else written.value = null;
    });
  /** A file of this page, a table of sets, or a week as somebody writes it. */
  const open = async (file: File) => {
    const place = ++lastOpened;
    try {
      const { openProgramme } = await import('./openProgramme.ts');
      const { text: whole, refused, said } = await openProgramme(new Uint8Array(await file.arrayBuffer()), file.name);
      if (place !== lastOpened) return;
      if (refused === null) takeFile(file.name, whole);
      else problem.value = refused;
      note.value = said;
    } catch (error) {
      if (place === lastOpened) problem.value = `${file.name}: ${reasonOf(error)}`;
    }
  };
  /** A file that this page saved is the programme as it was; any other text is looked at first. */
  const takeFile = (name: string, whole: string) => {
    if (!/^\s*\{/u.test(whole)) {
      setText(whole, 0);
      return;
    }
    const found = readDraft(whole);
    if (found.problem !== null) {
      problem.value = `${name}: ${found.problem}`;
      return;
    }
    editing.step(found.draft, `open ${name}`, null, true);
    editing.say(`${name} was opened.`);
    close('version-first');
  };
  const choose = (asked: NotRead, taken: string) => {
    chosen.value = [...chosen.value, chooseFor(asked, taken)];
    editing.tell(`“${asked.value}” is taken as ${taken}.`);
    editing.focusOn('understood');
  };
  /** @param way in place of the lines of a version, or below them */
  const take = (which: VersionName, way: 'replace' | 'below') => {
    const lines = offered.peek();
    if (lines.length === 0) return;
    const before = editing.draft.peek()[which] ?? NO_LINES;
    const name = which === 'first' ? 'version one' : 'version two';
    const all = lines.map(({ cells }) => cells);
    batch(() => {
      const list =
        way === 'replace'
          ? replaceLines(before, all)
          : all.reduce((now, cells) => addLine(now, now.lines.length, cells), before);
      taken.value = addTaken(taken.peek(), list.lines.slice(-lines.length), lines);
      keepTaken(taken.peek());
      editing.setList(which, list, way === 'replace' ? `replace ${name}` : `add to ${name}`);
      editing.showPage(which, 0);
      editing.say(
        way === 'replace'
          ? `${countOf(lines.length, 'line stands', 'lines stand')} in ${name}.`
          : `${countOf(lines.length, 'line was', 'lines were')} added to ${name}.`,
      );
      close(`version-${which}`);
    });
  };
  /** @param goTo id of what takes the focus */
  const close = (goTo: string) =>
    batch(() => {
      // A file that is still being read is not let in later.
      lastOpened++;
      setText('');
      isOpen.value = false;
      editing.focusOn(goTo);
    });
  const start = () => {
    isOpen.value = true;
    editing.focusOn('pasted');
  };
  const connect = () => {
    taken.value = readTaken();
    return () => clearTimeout(rest);
  };
  return {
    isOpen,
    text,
    written,
    offered,
    placed,
    isOpenProblem,
    problem,
    note,
    isReading,
    taken,
    setText,
    open,
    choose,
    take,
    close,
    start,
    connect,
  };
}

export type Opening = ReturnType<typeof createOpening>;
