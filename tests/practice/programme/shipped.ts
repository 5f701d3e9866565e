/** The shipped tables as programme tests read them. */
import { readFileSync } from 'node:fs';
import { readExercises } from '../../../src/evidence/readExercises.ts';
import { readArms } from '../../../src/evidence/table.ts';
import { analyseForPractice } from '../../../src/model/full.ts';
import { settingsSchema } from '../../../src/model/settings.ts';
import type { Calendar } from '../../../src/practice/programme/sessions.ts';

export const readData = (name: string) => readFileSync(new URL(`../../../data/${name}`, import.meta.url), 'utf8');

export const { arms } = readArms(readData('arms.csv'), 'arms.csv');
export const exerciseTable = readExercises(readData('exercises.csv'), 'exercises.csv');
export const exercises = exerciseTable.rows;
export const analysis = analyseForPractice(arms, settingsSchema.parse({}));
export const exampleWeek = readData('example-week.csv');
export const exampleToTargets = readData('example-week-to-targets.csv');
/** The regatta of the worked example: Saturday at 10, sessions ending at 19. */
export const regatta: Calendar = { status: 'trained', sessionHour: 19, event: { day: 6, hour: 10 } };
