/** How a number is written so that it is read, for messages: in a cell of its column, or in a line where it stands. */
import type { Field } from './understood.ts';

export const EXAMPLES: Readonly<Record<Exclude<Field, 'company'>, { readonly one: string; readonly range: string }>> = {
  sets: { one: '3', range: '3-4' },
  repetitions: { one: '8', range: '6-8' },
  load: { one: '80%', range: '75-80%' },
  possible: { one: 'possible 14', range: 'possible 12-14' },
  reserve: { one: '2 RIR', range: '1-2 RIR' },
};
