/**
 * The plans, what is asked of them and the settings as an address: short, and only what differs from the defaults.
 *
 *     ?a=parallel+light_0_20+80_4_20+weeks_8+cv_0.12+r_0.9+measure_muscle+thickness
 *     &need=a_light_0.6&place=parallel_2_40_light&v=2&curve=log
 *
 * A part that cannot be read is named; what can be read and is no possible plan
 * stands as it was written, and its card says what is wrong with it. The settings are those of Evidence
 * (settingsAddress.ts), by the same names.
 */
import { PLAN_NAMES, type PlanName } from '../../figures/plan/planWords.ts';
import { MOST_RESERVE, type PlannedDesign } from '../../model/plan/plannedStudy.ts';
import type { BandName } from '../../model/result.ts';
import type { Settings } from '../../model/settings.ts';
import { BANDS, DESIGNS, readNumber, readPlan, writePlan } from '../analysis/plannedStudyAddress.ts';
import { readSettings, writeSettings } from '../analysis/settingsAddress.ts';
import { defaultPlans, type Plans } from './plans.ts';

/** Widths that may be asked for, repetitions: from the narrowest that is told as one to as far as a reserve goes. */
export const ASKED_WIDTHS = { from: 0.05, to: MOST_RESERVE } as const;

/** How many people are asked for: of which plan, in which band, for an interval no wider than this, repetitions, one of `ASKED_WIDTHS`. */
export interface NeedAsked {
  readonly plan: PlanName;
  readonly band: BandName;
  readonly width: number;
}

/** Where arms are asked to stand; null for the band asks about all. */
export interface PlaceAsked {
  readonly design: PlannedDesign;
  readonly arms: 2 | 3;
  readonly people: number;
  readonly band: BandName | null;
}

/** Everything that the page keeps in its address. */
export interface PlanPage {
  readonly settings: Settings;
  readonly plans: Plans;
  readonly need: NeedAsked | null;
  /** null until it is asked. */
  readonly place: PlaceAsked | null;
}

const ALL_BANDS = 'both';
const EXPECTED_NEED = `Expected of “need”: a plan, its loads and a width from ${ASKED_WIDTHS.from} to ${ASKED_WIDTHS.to} repetitions, as in a_light_0.6.`;

/** Query with its question mark; empty where everything stands at its default. */
export function writePage({ settings, plans, need, place }: PlanPage): string {
  const parameters = new URLSearchParams();
  const isDefault = JSON.stringify(plans) === JSON.stringify(defaultPlans(settings));
  for (const name of PLAN_NAMES) {
    const plan = plans[name];
    if (plan && !isDefault) parameters.set(name.toLowerCase(), writePlan(plan));
  }
  if (need) parameters.set('need', [need.plan.toLowerCase(), need.band, need.width].join('_'));
  if (place) parameters.set('place', [place.design, place.arms, place.people, place.band ?? ALL_BANDS].join('_'));
  const query = [...(parameters.size > 0 ? [String(parameters)] : []), writeSettings(settings).slice(1)];
  const text = query.filter(Boolean).join('&');
  return text ? `?${text}` : '';
}

/** @returns what was read; `notice` says what was not, for the reader, null where everything was. Never throws. */
export function readPage(query: string): PlanPage & { readonly notice: string | null } {
  const parameters = new URLSearchParams(query);
  const unread: string[] = [];
  const take = <Value>(name: string, read: (text: string) => Value | null): Value | null => {
    const texts = parameters.getAll(name);
    parameters.delete(name);
    if (texts.length === 0) return null;
    const value = texts.length === 1 ? read(texts[0]) : null;
    if (value === null) unread.push(name);
    return value;
  };
  const found = PLAN_NAMES.flatMap((name) => {
    const plan = take(name.toLowerCase(), readPlan);
    return plan ? [[name, plan] as const] : [];
  });
  const need = take('need', readNeed);
  const place = take('place', readPlace);
  const { settings, notice } = readSettings(String(parameters));
  const plans: Plans = found.length > 0 ? Object.fromEntries(found) : defaultPlans(settings);
  const lost =
    unread.length > 0 ? `Parts of the address could not be read and were left out: ${unread.join(', ')}.` : '';
  const asked = unread.includes('need') ? EXPECTED_NEED : '';
  return { settings, plans, need, place, notice: [lost, asked, notice].filter(Boolean).join(' ') || null };
}

function readNeed(text: string): NeedAsked | null {
  const [name, place, written, ...more] = text.split('_');
  const plan = PLAN_NAMES.find((one) => one.toLowerCase() === name);
  const band = BANDS.find((one) => one === place);
  const width = readNumber(written ?? '');
  return plan && band && width !== null && isAsked(width) && more.length === 0 ? { plan, band, width } : null;
}

function isAsked(width: number): boolean {
  return width >= ASKED_WIDTHS.from && width <= ASKED_WIDTHS.to;
}

function readPlace(text: string): PlaceAsked | null {
  const [first, count, written, place, ...more] = text.split('_');
  const design = DESIGNS.find((one) => one === first);
  const arms = ([2, 3] as const).find((one) => String(one) === count);
  const people = readNumber(written ?? '');
  const band = place === ALL_BANDS ? null : BANDS.find((one) => one === place);
  const isWhole = people !== null && Number.isInteger(people) && people >= 0;
  return design && arms && isWhole && band !== undefined && more.length === 0 ? { design, arms, people, band } : null;
}
