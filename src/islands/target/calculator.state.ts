/**
 * State of the calculator: what a reader has chosen, kept in the address, and the advice for it. All
 * but the share to keep and the confidence is answered from the analysis at hand; those two ask the
 * worker for another one.
 */
import { computed, effect, signal } from '@preact/signals';
import type { Exercise } from '../../evidence/exercises.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import { settingsSchema } from '../../model/settings.ts';
import { addressOfTable, readMark } from '../../ownTable/ownTable.ts';
import { type Advice, advise } from '../../practice/advice.ts';
import { judgementOf } from '../../practice/judgement.ts';
import { loadForPossible, POSSIBLE_REPETITIONS, possibleAt } from '../../practice/possible.ts';
import type { Situation } from '../../practice/situation.ts';
import type { WorkerReply } from '../analysis/analysisWorker.ts';
import { type Calculation, startCalculation } from '../analysis/calculation.ts';
import { type Choices, DEFAULT_CHOICES, OTHER_EXERCISE, readChoices, writeChoices } from './situationAddress.ts';

/** Milliseconds without a change after which the address is written: browsers refuse to write it at every step of a slider. */
const REST = 300;

/** The site's table: its address, and whether its studies are invented. */
export interface ShippedTable {
  readonly address: string;
  readonly demonstration: boolean;
}

export function createCalculator(start: PracticeAnalysis, exercises: readonly Exercise[], shipped: ShippedTable) {
  /** True while the reader's own table is wanted and the site's still answers. */
  const foreign = signal(false);
  /** True where the studies behind the answer are invented. */
  const demonstration = signal(shipped.demonstration);
  const choices = signal<Choices>(DEFAULT_CHOICES);
  const analysis = signal<PracticeAnalysis>(start);
  const pending = signal(false);
  const problem = signal<string | null>(null);
  const ignored = signal<readonly string[]>([]);
  /** Entries that were not taken, as they were written, by the control's name. */
  const refused = signal<Readonly<Record<string, string>>>({});
  const exercise = computed<Situation['exercise']>(() => {
    const { exercise: name, pins, stops, partials } = choices.value;
    const listed = exercises.find((one) => one.name === name);
    return listed ?? { name: 'this exercise', canPin: pins, stoppable: stops, partials, relation: null };
  });
  const situation = computed<Situation>(() => {
    const { purpose, load, planned, company, status, hours, judgement, bias, spread } = choices.value;
    return {
      purpose,
      load,
      planned,
      exercise: exercise.value,
      company,
      status,
      hoursToEvent: hours,
      judgement: judgementOf(judgement, { bias, spread }),
    };
  });
  const advice = computed<Advice>(() => advise(analysis.value, situation.value));
  const possible = computed(() => possibleAt(choices.value.load, exercise.value.relation));
  const change = (part: Partial<Choices>) => {
    choices.value = { ...choices.value, ...part };
    refused.value = {};
  };
  const refuse = (control: string, written: string) => {
    refused.value = { ...refused.value, [control]: written };
  };
  const enterRepetitions = (written: string) => {
    const { from, to } = POSSIBLE_REPETITIONS;
    const repetitions = Number(written);
    const isInRange = written.trim() !== '' && repetitions >= from && repetitions <= to;
    const found = isInRange ? loadForPossible(repetitions, exercise.value.relation) : null;
    if (!found) refuse('repetitions', written);
    else change({ load: Math.round(10 * found.load) / 10 });
  };
  /** Takes a number of a control whose limits are the address's own. */
  const enterNumber = (control: 'planned' | 'hours' | 'bias' | 'spread', written: string) => {
    const query = new URLSearchParams([[control, written.trim() === '' && control === 'hours' ? 'none' : written]]);
    const { values, unread } = readChoices(query.toString(), []);
    if (unread.length > 0) refuse(control, written);
    else change(values);
  };

  /** Reads the address, starts the worker when it is needed and keeps the address in step; returns what ends it. */
  const connect = () => {
    const { values, unread } = readChoices(
      location.search,
      exercises.map(({ name }) => name),
    );
    change(values);
    ignored.value = unread;
    const table = addressOfTable(shipped.address);
    const isOwn = table !== shipped.address;
    foreign.value = isOwn;
    let calculation: Calculation | null = null;
    let latest = 0;
    const take = (reply: WorkerReply) => {
      if (reply.id !== latest) return;
      pending.value = false;
      problem.value = reply.kind === 'problem' ? reply.problem : null;
      if (reply.kind !== 'practice') return;
      analysis.value = reply.analysis;
      foreign.value = false;
      if (isOwn) demonstration.value = readMark()?.demonstration ?? shipped.demonstration;
    };
    const fail = (reason: string) => {
      pending.value = false;
      problem.value = reason;
    };
    const wanted = computed(() => `${choices.value.keep} ${choices.value.confidence}`);
    const stopAsking = effect(() => {
      const [keep, confidence] = wanted.value.split(' ').map(Number);
      const settings = settingsSchema.parse({ ...start.settings, keptShare: keep / 100, confidence: confidence / 100 });
      latest++;
      if (!isOwn && JSON.stringify(settings) === JSON.stringify(start.settings)) {
        analysis.value = start;
        pending.value = false;
        problem.value = null;
        return;
      }
      pending.value = true;
      calculation ??= startCalculation(take, fail);
      calculation.ask({ kind: 'practice', id: latest, table, settings });
    });
    let rest: ReturnType<typeof setTimeout> | undefined;
    const stopWriting = effect(() => {
      const query = writeChoices(choices.value);
      clearTimeout(rest);
      rest = setTimeout(() => history.replaceState(null, '', `${location.pathname}${query}${location.hash}`), REST);
    });
    return () => {
      stopAsking();
      stopWriting();
      clearTimeout(rest);
      calculation?.end();
    };
  };
  return {
    choices,
    analysis,
    exercise,
    situation,
    advice,
    possible,
    pending,
    foreign,
    demonstration,
    problem,
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
