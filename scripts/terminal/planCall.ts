/** The options of a call that plans a study. */

import type { PlannedArm, PlannedDesign, PlannedStudy } from '../../src/model/plan/plannedStudy.ts';
import type { BandName } from '../../src/model/result.ts';
import { CallError } from './call.ts';

type Written = Partial<
  Record<'design' | 'weeks' | 'measure' | 'cv' | 'correlation' | 'width' | 'best' | 'people' | 'band', string>
>;

export interface BestAsked {
  readonly arms: 1 | 2 | 3;
  readonly people: number;
  readonly band: BandName | null;
}

export interface PlanCall {
  readonly plan: PlannedStudy;
  readonly width: number | null;
  readonly best: BestAsked | null;
}

const DESIGNS: readonly PlannedDesign[] = ['parallel', 'within-person'];
const BANDS: readonly BandName[] = ['light', 'heavy', 'all'];

export function readPlan({ arm, ...written }: Written & { readonly arm: readonly string[] }): PlanCall {
  const { design = 'parallel' } = written;
  const known = DESIGNS.find((one) => one === design);
  if (!known) throw expected('--design', DESIGNS.join(' or '), design);
  const best = readBest(written);
  if (!best && arm.length === 0)
    throw new CallError('expected an arm (--arm light:0:10) or --best, received neither', 2);
  if (best && arm.length > 0) throw new CallError('expected an arm (--arm light:0:10) or --best, received both', 2);
  const width = readNumber(written, 'width');
  refuseUnused(written, best !== null);
  if (width !== null && !(width > 0)) throw expected('--width', 'repetitions above 0', String(written.width));
  return {
    plan: {
      design: known,
      arms: arm.map(readArm),
      weeks: readNumber(written, 'weeks'),
      measure: written.measure ?? null,
      coefficientOfVariation: readNumber(written, 'cv'),
      correlation: readNumber(written, 'correlation'),
    },
    width,
    best,
  };
}

/** What serves arms alone, or the search for the best places alone, is not taken in silence beside the other. */
function refuseUnused(written: Written, isBest: boolean): void {
  if (isBest && written.width !== undefined) {
    throw new CallError('expected --width beside arms (--arm light:0:10), received it beside --best', 2);
  }
  const unused = (['people', 'band'] as const).find((key) => written[key] !== undefined);
  if (isBest || unused === undefined) return;
  throw new CallError(`expected --${unused} beside --best, received it beside arms, which say their own`, 2);
}

function readBest(written: Written): BestAsked | null {
  const arms = readNumber(written, 'best');
  if (arms === null) return null;
  if (arms !== 1 && arms !== 2 && arms !== 3) throw expected('--best', '1, 2 or 3 arms', String(written.best));
  const people = readNumber(written, 'people');
  if (people === null) throw new CallError('expected the people of the study (--people 40) beside --best', 2);
  if (!(Number.isInteger(people) && people > 0))
    throw expected('--people', 'a whole number above 0', String(written.people));
  const { band = null } = written;
  const known = BANDS.find((one) => one === band) ?? null;
  if (band !== null && !known) throw expected('--band', BANDS.join(', '), band);
  return { arms, people, band: known };
}

function readArm(text: string): PlannedArm {
  const parts = text.split(':');
  const band = BANDS.find((one) => one === parts[0]);
  const [load, reserve, people] = parts.map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  if (parts.length !== 3 || Number.isNaN(reserve) || Number.isNaN(people) || (!band && Number.isNaN(load)))
    throw expected('--arm', 'LOAD:RESERVE:PEOPLE such as light:0:10 or 75:2:15', text);
  return { load: band ?? load, reserve, people };
}

function readNumber(written: Written, key: keyof Written): number | null {
  const text = written[key];
  if (text === undefined) return null;
  const value = text.trim() === '' ? Number.NaN : Number(text);
  if (!Number.isFinite(value)) throw expected(`--${key}`, 'a number', text);
  return value;
}

function expected(option: string, what: string, received: string): CallError {
  return new CallError(`${option}: expected ${what}, received “${received}”`, 2);
}
