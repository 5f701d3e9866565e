/** State of the calculator: what a reader has chosen, kept in the address, and the advice for it. */
import { computed, effect, signal } from '@preact/signals';
import type { Exercise } from '../../evidence/exercises.ts';
import { type Advice, advise } from '../../practice/advice.ts';
import { judgementOf, TAKEN_AS_SAID } from '../../practice/judgement.ts';
import { judgeOwn } from '../../practice/ownJudgement.ts';
import { loadForPossible, POSSIBLE_REPETITIONS, possibleAt } from '../../practice/possible.ts';
import type { Situation } from '../../practice/situation.ts';
import { type Built, createFitted } from './fitted.state.ts';
import { createRecent } from './recent.state.ts';
import {
  type Choices,
  DEFAULT_CHOICES,
  type NumberChoice,
  OTHER_EXERCISE,
  readChoices,
  readNumber,
  writeChoices,
} from './situationAddress.ts';

/** Milliseconds without a change after which the address is written: browsers refuse to write it at every step of a slider. */
const REST = 300;

/** @param table address of the table that is read */
export function createCalculator(built: Built, exercises: readonly Exercise[], table: string) {
  const choices = signal<Choices>(DEFAULT_CHOICES);
  const fitted = createFitted(built, table, choices);
  const ignored = signal<readonly string[]>([]);
  /** Entries that were not taken, as they were written, by the control's name. */
  const refused = signal<Readonly<Record<string, string>>>({});
  /** Why the load is another than that of the repetitions entered last; null where it is theirs. */
  const bound = signal<string | null>(null);
  const exercise = computed<Situation['exercise']>(() => {
    const { exercise: name, pins, stops, partials } = choices.value;
    const listed = exercises.find((one) => one.name === name);
    return (
      listed ?? { name: 'this exercise', canPin: pins, stoppable: stops, partials, relation: null, isUnlisted: true }
    );
  });
  /** What the test sets come to, asked for or not. */
  const own = computed(() => judgeOwn(choices.value.sets));
  const situation = computed<Situation>(() => {
    const { purpose, load, planned, company, status, hours, judgement } = choices.value;
    return {
      purpose,
      load,
      planned,
      exercise: exercise.value,
      company,
      status,
      hoursToEvent: hours,
      judgement: judgementOf(judgement, own.value),
    };
  });
  const advice = computed<Advice>(() => advise(fitted.analysis.value, situation.value));
  /** What is said is moved by it; planned repetitions are counted, so that nothing is judged. */
  const judged = computed(() => (advice.value.mainLift ? TAKEN_AS_SAID : situation.value.judgement));
  const possible = computed(() => possibleAt(choices.value.load, exercise.value.relation));
  const change = (part: Partial<Choices>) => {
    choices.value = { ...choices.value, ...part };
    refused.value = {};
    bound.value = null;
  };
  const names = exercises.map(({ name }) => name);
  const recent = createRecent(choices, names);
  const refuse = (control: string, written: string) => {
    refused.value = { ...refused.value, [control]: written };
  };
  const enterRepetitions = (written: string) => {
    const { from, to } = POSSIBLE_REPETITIONS;
    const repetitions = Number(written);
    const isInRange = written.trim() !== '' && repetitions >= from && repetitions <= to;
    const found = isInRange ? loadForPossible(repetitions, exercise.value.relation) : null;
    if (!found) refuse('repetitions', written);
    else {
      // Down to the tenth, so that no fewer are possible there than were entered: at 81.6 % it is 7.99 for 8.
      change({ load: Math.floor(10 * found.load + 1e-9) / 10 });
      bound.value = found.bound;
    }
  };
  const enterNumber = (control: NumberChoice, written: string) => {
    const read = readNumber(control, written);
    if (read) change(read);
    else refuse(control, written);
  };

  /** Reads the address, asks for what it needs and keeps the address in step; returns what ends it. */
  const connect = () => {
    const { values, unread } = readChoices(location.search, names);
    change(values);
    ignored.value = unread;
    const disconnect = fitted.connect();
    const stopKeeping = recent.connect();
    const writeAddress = () => {
      history.replaceState(null, '', `${location.pathname}${writeChoices(choices.peek())}${location.hash}`);
    };
    let rest: ReturnType<typeof setTimeout> | undefined;
    const stopWriting = effect(() => {
      void choices.value;
      clearTimeout(rest);
      rest = setTimeout(writeAddress, REST);
    });
    return () => {
      disconnect();
      stopKeeping();
      stopWriting();
      clearTimeout(rest);
      // What was moved last is kept too, by whoever reads the address next.
      writeAddress();
    };
  };
  return {
    choices,
    fitted,
    exercise,
    own,
    recent,
    situation,
    advice,
    judged,
    possible,
    bound,
    ignored,
    refused,
    change,
    enterRepetitions,
    enterNumber,
    connect,
  };
}

export type Calculator = ReturnType<typeof createCalculator>;

/** True where the reader describes the exercise. */
export function isOther({ exercise }: Choices): boolean {
  return exercise === OTHER_EXERCISE;
}
