/**
 * State of the programme check: two versions as text, the exercises that the reader described, and the
 * calendar. Nothing leaves the browser; the text outlives a reload of the tab.
 */
import { computed, signal } from '@preact/signals';
import { type Exercise, plainName } from '../../evidence/exercises.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import type { ProgrammeInput } from '../../practice/programme/report.ts';
import { readSaved, type SavedProgramme, writeSaved } from '../../practice/programme/saved.ts';
import { reasonOf } from '../../ui/reasonOf.ts';
import { saveFile } from '../../ui/saveFile.ts';
import { createChecking } from './checking.state.ts';

const STORE = 'shy-of-failure programme';

export type VersionName = 'first' | 'second';

/** @param table address of the table that is read */
export function createProgramme(
  start: PracticeAnalysis,
  listed: readonly Exercise[],
  example: SavedProgramme,
  table: string,
) {
  const programme = signal<SavedProgramme>(example);
  const input = computed<ProgrammeInput>(() => ({
    ...programme.value,
    exercises: [...programme.value.exercises, ...listed],
  }));
  const checking = createChecking(start, input, table, () => store(programme.peek()));
  /** Why the last step could not be done. */
  const problem = signal<string | null>(null);
  /** How the last file was read, where that is not plain. */
  const note = signal('');
  const change = (part: Partial<SavedProgramme>) => {
    problem.value = null;
    note.value = '';
    programme.value = { ...programme.value, ...part };
  };
  const describe = (exercise: Exercise) => {
    const others = programme.value.exercises.filter(({ name }) => plainName(name) !== plainName(exercise.name));
    change({ exercises: [...others, exercise] });
  };
  const save = () => {
    saveFile({ name: 'programme.json', type: 'application/json', text: writeSaved(programme.value) });
  };
  /** Number of the file that was opened last: one that takes longer to read must not come after it. */
  let lastOpened = 0;
  /** A file of this page, or a table of sets for one version. */
  const open = async (file: File, version: VersionName) => {
    const place = ++lastOpened;
    try {
      const { openProgramme } = await import('./openProgramme.ts');
      const { text, refused, said } = await openProgramme(new Uint8Array(await file.arrayBuffer()), file.name);
      if (place !== lastOpened) return;
      note.value = '';
      problem.value = refused;
      if (refused !== null) return;
      takeText(file.name, text, version);
      note.value = said;
    } catch (error) {
      problem.value = `${file.name}: ${reasonOf(error)}`;
    }
  };
  const takeText = (name: string, text: string, version: VersionName) => {
    if (!/^\s*\{/u.test(text)) {
      change({ [version]: text });
      return;
    }
    const read = readSaved(text);
    if (read.problem === null) change(read.programme);
    else problem.value = `${name}: ${read.problem}`;
  };
  const connect = () => {
    const restored = readStored();
    if (restored) programme.value = restored;
    const disconnect = checking.connect(restored !== null);
    return () => {
      // What was typed last is kept too, by whoever reads the store next.
      if (programme.peek() !== example) store(programme.peek());
      disconnect();
    };
  };
  const showExample = () => change(example);
  return { programme, checking, problem, note, change, describe, save, open, showExample, connect };
}

export type ProgrammeState = ReturnType<typeof createProgramme>;

/** What this tab kept; null where it kept nothing that can be read. */
function readStored(): SavedProgramme | null {
  try {
    return readSaved(sessionStorage.getItem(STORE) ?? '').programme;
  } catch {
    // A browser may forbid pages to keep anything.
    return null;
  }
}

function store(programme: SavedProgramme): void {
  try {
    sessionStorage.setItem(STORE, writeSaved(programme));
  } catch {
    // Forbidden or full: the programme is checked all the same, and can be saved to a file.
  }
}
