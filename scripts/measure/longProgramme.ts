/** A programme of many different lines, for measuring. */
import type { Exercise } from '../../src/evidence/exercises.ts';

const DAYS = 7;

/** CSV of so many lines over so many weeks, by day, with loads from 40 to 89 % and reserves from 0 to 6. */
export function longProgramme(exercises: readonly Exercise[], length: number, weeks: number): string {
  const lines = Array.from({ length }, (_, i) => {
    const { name } = exercises[i % exercises.length];
    return `${1 + Math.floor((i / length) * weeks * DAYS)},${name},3,8,${40 + (i % 50)},,${i % 7},${i % 3 ? 'spotter' : ''}`;
  });
  return `day,exercise,sets,repetitions,load,possible,reserve,company\n${lines.join('\n')}\n`;
}
