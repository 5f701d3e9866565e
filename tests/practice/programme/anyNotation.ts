/** A programme written in a notation that chance puts together, by an independent writer. */
import fc from 'fast-check';
import { exercises } from './shipped.ts';

export interface PlainSet {
  readonly day: number;
  readonly exercise: string;
  readonly sets: number;
  readonly repetitions: number;
  readonly load: number;
  readonly reserve: number;
  readonly company: 'alone' | 'spotter' | 'safety arms';
}

const NAMES = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** By day, as people write. */
export const programmes: fc.Arbitrary<readonly PlainSet[]> = fc
  .array(
    fc.record({
      day: fc.integer({ min: 1, max: 84 }),
      exercise: fc.constantFrom(...exercises.map(({ name }) => name)),
      sets: fc.integer({ min: 1, max: 7 }),
      repetitions: fc.integer({ min: 1, max: 30 }),
      // Half per cents above 1: below, a load is a share.
      load: fc.integer({ min: 40, max: 200 }).map((halves) => halves / 2),
      reserve: fc.integer({ min: 0, max: 5 }),
      company: fc.constantFrom('alone' as const, 'spotter' as const, 'safety arms' as const),
    }),
    { minLength: 1, maxLength: 12 },
  )
  .map((sets) => sets.sort((a, b) => a.day - b.day));

export interface Notation {
  readonly layout: 'tabs' | 'semicolons' | 'lines' | 'headings';
  readonly decimal: '.' | ',';
  readonly day: 'full' | 'short' | 'dotted';
  readonly times: string;
  readonly load: (percent: string) => string;
  readonly reserve: (reps: number) => string;
  readonly company: Readonly<Record<PlainSet['company'], string>>;
  /** Index of a synonym; the name itself where there are fewer. */
  readonly synonym: number;
  readonly capitals: boolean;
  readonly between: string;
}

export const notations: fc.Arbitrary<Notation> = fc.record({
  layout: fc.constantFrom('tabs' as const, 'semicolons' as const, 'lines' as const, 'headings' as const),
  decimal: fc.constantFrom('.' as const, ',' as const),
  day: fc.constantFrom('full' as const, 'short' as const, 'dotted' as const),
  times: fc.constantFrom('x', ' x ', '×', ' X ', '*', ' by '),
  load: fc.constantFrom<Notation['load']>(
    (percent) => `${percent}%`,
    (percent) => `@ ${percent} %`,
    (percent) => `at ${percent} per cent`,
    (percent) => `${percent}% of 1RM`,
    (percent) => `(${percent}%)`,
  ),
  reserve: fc.constantFrom<Notation['reserve']>(
    (reps) => `${reps} RIR`,
    (reps) => `RIR ${reps}`,
    (reps) => `@${reps} in reserve`,
    (reps) => `RPE ${10 - reps}`,
    (reps) => `${reps} reps left`,
    (reps) => `${['zero', 'one', 'two', 'three', 'four', 'five'][reps]} in reserve`,
    (reps) => (reps === 0 ? 'to failure' : `${reps} short of failure`),
  ),
  company: fc.constantFrom(
    { alone: 'alone', spotter: 'spotter', 'safety arms': 'safety arms' },
    { alone: '', spotter: 'with a spotter', 'safety arms': 'safeties' },
    { alone: 'no spotter', spotter: 'spotted', 'safety arms': 'in the safety pins' },
  ),
  synonym: fc.integer({ min: -1, max: 3 }),
  capitals: fc.boolean(),
  between: fc.constantFrom(' ', ', ', ' – ', ' | '),
});

/** @returns the programme's text */
export function write(sets: readonly PlainSet[], notation: Notation): string {
  const number = (value: number) => String(value).replace('.', notation.decimal);
  const dayOf = ({ day }: PlainSet) => {
    const name = NAMES[(day - 1) % 7];
    return notation.day === 'full' ? name : `${name.slice(0, 3)}${notation.day === 'dotted' ? '.' : ''}`;
  };
  const weekOf = ({ day }: PlainSet) => Math.ceil(day / 7);
  const nameOf = ({ exercise }: PlainSet) => {
    const listed = exercises.find(({ name }) => name === exercise);
    const name = listed?.synonyms[notation.synonym] ?? exercise;
    return notation.capitals ? name.toUpperCase() : name;
  };
  const { layout, times, between } = notation;
  if (layout === 'tabs' || layout === 'semicolons') {
    const rows = sets.map((set) => [
      weekOf(set),
      dayOf(set),
      nameOf(set),
      `${set.sets}${times}${set.repetitions}`,
      number(set.load),
      set.reserve,
      notation.company[set.company],
    ]);
    const sign = layout === 'tabs' ? '\t' : ';';
    return [['Week', 'Day', 'Lift', 'Sets x reps', '%1RM', 'RIR', 'Company'], ...rows]
      .map((cells) => cells.join(sign))
      .join('\n');
  }
  const line = (set: PlainSet) =>
    [
      nameOf(set),
      `${set.sets}${times}${set.repetitions}`,
      notation.load(number(set.load)),
      notation.reserve(set.reserve),
      notation.company[set.company],
    ]
      .filter(Boolean)
      .join(between);
  if (layout === 'lines') return sets.map((set) => `Week ${weekOf(set)} ${dayOf(set)}: ${line(set)}`).join('\n');
  return sets.map((set) => `Week ${weekOf(set)}\n${dayOf(set)}\n\n${line(set)}`).join('\n');
}
