/** The situations that were asked about last, as the queries of their addresses: newest first, said in words. */
import * as z from 'zod/mini';
import '../../evidence/zodConfig.ts';
import { formatPlain } from '../../figures/format.ts';
import { countOf } from '../../numerics/countOf.ts';
import { type Choices, DEFAULT_CHOICES, OTHER_EXERCISE, readChoices } from './situationAddress.ts';

/** As many as are seen at one look. */
export const MOST_RECENT = 5;

const stored = z.array(z.string());

/** Queries as the browser kept them; what is no list, or no situation any more, is left out. */
export function readRecent(text: string | null, exercises: readonly string[]): readonly string[] {
  const parsed = stored.safeParse(parse(text ?? '[]'));
  if (!parsed.success) return [];
  const whole = parsed.data.filter((query) => query.startsWith('?') && openSituation(query, exercises) !== null);
  return [...new Set(whole)].slice(0, MOST_RECENT);
}

/**
 * @param replaced what the same visit had put there for the same set, a slider's step before; null where nothing
 * @returns the query first, each once, five at most; an empty query is the page's beginning and is not kept
 */
export function addRecent(queries: readonly string[], query: string, replaced: string | null): readonly string[] {
  if (query === '') return queries;
  return [query, ...queries.filter((one) => one !== query && one !== replaced)].slice(0, MOST_RECENT);
}

/** The choices of a query; null where any part of it is not taken. */
export function openSituation(query: string, exercises: readonly string[]): Choices | null {
  const { values, unread } = readChoices(query, exercises);
  return unread.length > 0 ? null : { ...DEFAULT_CHOICES, ...values };
}

/** “squat at 80 % of 1RM, for growth, spotter, event 30 hours away” */
export function tellSituation(choices: Choices): string {
  const { exercise, load, purpose, company, status, hours, judgement, sets, keep, confidence, planned } = choices;
  const parts = [
    `${exercise === OTHER_EXERCISE ? tellOther(choices) : exercise} at ${formatPlain(load)}\u00a0% of 1RM`,
    `for ${purpose}`,
    purpose === 'strength, main lift' ? `${countOf(planned, 'repetition')} planned` : '',
    company,
    status === DEFAULT_CHOICES.status ? '' : status,
    hours === null ? '' : `event ${countOf(hours, 'hour')} away`,
    judgement === 'own test sets' ? countOf(sets.length, 'test set') : '',
    judgement === 'as most people' ? 'judging as most people do' : '',
    keep === DEFAULT_CHOICES.keep ? '' : `${keep}\u00a0% of growth kept`,
    confidence === DEFAULT_CHOICES.confidence ? '' : `${confidence}\u00a0% intervals`,
  ];
  return parts.filter(Boolean).join(', ');
}

/** What the reader said of it, by which its cautions and least reserve differ: “another exercise that can pin”. */
function tellOther({ pins, stops, partials }: Choices): string {
  const facts = [pins ? 'can pin' : 'cannot pin', stops && 'can be stopped anywhere', partials && 'suits partials'];
  return `another exercise (${facts.filter(Boolean).join(', ')})`;
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
