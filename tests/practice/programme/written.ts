/** From a written text to the programme that is checked, by the whole way that a page takes. */
import { NO_LINES, replaceLines } from '../../../src/practice/programme/edit.ts';
import { readProgramme } from '../../../src/practice/programme/read.ts';
import { resolveList } from '../../../src/practice/programme/resolve.ts';
import { readWritten } from '../../../src/practice/programme/written/readWritten.ts';
import { toCells } from '../../../src/practice/programme/written/toCells.ts';
import { exercises } from './shipped.ts';

export function readWhole(text: string) {
  const written = readWritten(text, exercises);
  const list = replaceLines(NO_LINES, written.lines.map(toCells));
  const resolved = resolveList(list, exercises);
  const programme = readProgramme(resolved.text, 'week', exercises);
  const sets = programme.lines.map(({ day, exercise, sets, repetitions, load, reserve, company }) => ({
    day,
    exercise: exercise.name,
    sets,
    repetitions,
    load,
    reserve,
    company,
  }));
  return { written, list, resolved, programme, sets };
}
