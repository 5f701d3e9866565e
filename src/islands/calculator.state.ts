/**
 * State of the calculator: what a reader has chosen, kept in the address, and the analysis that
 * answers it. The fit runs in a worker; while it works the newest request replaces older ones.
 */
import { computed, effect, signal } from '@preact/signals';
import { z } from 'zod';
import { loadForRepetitions, meanRepetitions } from '../evidence/repetitions.ts';
import { defaultSettings, settingsSchema } from '../model/settings.ts';
import { type Advice, advise } from '../practice/advice.ts';
import { COMPANIES } from '../practice/cautions.ts';
import type { TargetAnalysis } from '../practice/targetTable.ts';
import type { WorkerReply, WorkerRequest } from './analysisWorker.ts';

const numberInText = (schema: z.ZodNumber) =>
  z
    .string()
    .regex(/^\d+(?:\.\d+)?$/u)
    .transform(Number)
    .pipe(schema);

/** Per cent of 1RM that can be asked for: inside the published 15–95, from where 100 repetitions are possible. */
export const LOAD_RANGE = { from: 20, to: 95 } as const;
/** Repetitions possible at the ends of that range, whole numbers. */
export const POSSIBLE_REPETITIONS = { from: 3, to: 100 } as const;

/** The calculator's part of the address; a field that does not hold falls back to its default. */
const situationFields = {
  load: numberInText(z.number().gte(LOAD_RANGE.from).lte(LOAD_RANGE.to)),
  pins: z.enum(['yes', 'no']).transform((word) => word === 'yes'),
  company: z.enum(COMPANIES),
  keep: numberInText(z.number().gte(50).lte(99)),
  confidence: numberInText(z.number().gte(50).lte(99)),
} as const;

export type Situation = { readonly [Name in keyof typeof situationFields]: z.output<(typeof situationFields)[Name]> };

const DEFAULT_SITUATION: Situation = {
  load: 75,
  pins: true,
  company: 'alone',
  keep: 100 * defaultSettings.keptShare,
  confidence: 100 * defaultSettings.confidence,
};

export function createCalculator(start: TargetAnalysis, table: string) {
  const situation = signal<Situation>(DEFAULT_SITUATION);
  const analysis = signal<TargetAnalysis>(start);
  const pending = signal(false);
  const problem = signal<string | null>(null);
  const ignored = signal<readonly string[]>([]);
  /** An entry of repetitions that was not taken, as it was written. */
  const refused = signal<string | null>(null);
  const advice = computed<Advice>(() => {
    const { load, pins, company } = situation.value;
    return advise(analysis.value, load, { canPin: pins, company });
  });
  const repetitions = computed(() => meanRepetitions(situation.value.load));
  const change = (part: Partial<Situation>) => {
    situation.value = { ...situation.value, ...part };
    refused.value = null;
  };
  const enterRepetitions = (written: string) => {
    const load = loadOfRepetitions(Number(written));
    if (load === null) refused.value = written;
    else change({ load });
  };

  /** Reads the address, starts the worker and keeps both in step; returns what ends it. */
  const connect = () => {
    const { values, unread } = readAddress(location.search);
    change(values);
    ignored.value = unread;
    const worker = new Worker(new URL('./analysisWorker.ts', import.meta.url), { type: 'module' });
    let latest = 0;
    worker.addEventListener('message', ({ data }: MessageEvent<WorkerReply>) => {
      if (data.id !== latest) return;
      pending.value = false;
      problem.value = data.kind === 'problem' ? data.problem : null;
      if (data.kind === 'analysis') analysis.value = data.analysis;
    });
    worker.addEventListener('error', () => {
      pending.value = false;
      problem.value = 'the calculation could not be started in this browser';
    });
    const asked = computed(() => JSON.stringify([situation.value.keep, situation.value.confidence]));
    const stopAsking = effect(() => {
      const [keep, confidence] = z.tuple([z.number(), z.number()]).parse(JSON.parse(asked.value));
      const settings = settingsSchema.parse({ ...start.settings, keptShare: keep / 100, confidence: confidence / 100 });
      latest++;
      pending.value = true;
      const request: WorkerRequest = { kind: 'analyse', id: latest, table, settings };
      worker.postMessage(request);
    });
    const stopWriting = effect(() => {
      history.replaceState(null, '', writeAddress(situation.value));
    });
    return () => {
      stopAsking();
      stopWriting();
      worker.terminate();
    };
  };
  return {
    situation,
    analysis,
    advice,
    repetitions,
    pending,
    problem,
    ignored,
    refused,
    change,
    enterRepetitions,
    connect,
  };
}

export type Calculator = ReturnType<typeof createCalculator>;

/** The load at which a mean number of repetitions is possible, to a tenth of a per cent; null out of range. */
function loadOfRepetitions(repetitions: number): number | null {
  const inRange = repetitions >= POSSIBLE_REPETITIONS.from && repetitions <= POSSIBLE_REPETITIONS.to;
  const load = inRange ? loadForRepetitions(repetitions) : null;
  return load === null ? null : Math.round(10 * load) / 10;
}

function readAddress(search: string): { values: Partial<Situation>; unread: readonly string[] } {
  const parameters = new URLSearchParams(search);
  const values: Record<string, unknown> = {};
  const unread: string[] = [];
  for (const [name, schema] of Object.entries(situationFields)) {
    const written = parameters.get(name);
    if (written === null) continue;
    const parsed = schema.safeParse(written);
    if (parsed.success) values[name] = parsed.data;
    else unread.push(name);
  }
  return { values, unread };
}

function writeAddress(situation: Situation): string {
  const parameters = new URLSearchParams();
  for (const name of Object.keys(situationFields) as (keyof Situation)[]) {
    const value = situation[name];
    if (value === DEFAULT_SITUATION[name]) continue;
    parameters.set(name, typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value));
  }
  const query = parameters.toString();
  return `${location.pathname}${query ? `?${query}` : ''}${location.hash}`;
}
