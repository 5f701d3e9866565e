/**
 * The response: curves that can be asked after the fit. Proven against the fit's own inference (to
 * rounding), and by identities of the stacked covariance. The kept share is proven as the target's
 * dual: a reserve lies in the target's set exactly where the share lies in the share's interval.
 */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { analyseWithFits } from '../../src/model/analyse.ts';
import { inferKeptShare } from '../../src/model/keptShare.ts';
import { type OpenResponse, openResponse, packResponse } from '../../src/model/response.ts';
import { inferContrast } from '../../src/model/robust.ts';
import { CURVES, settingsSchema } from '../../src/model/settings.ts';
import { expectWithin } from '../support/closeness.ts';

const { arms } = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const CONFIDENCE = 0.95;
const open = (settings: object) => {
  const { analysis, fits } = analyseWithFits(arms, settingsSchema.parse(settings));
  // Through JSON, as a page gets it.
  const response = openResponse(JSON.parse(JSON.stringify(packResponse(fits))));
  return { analysis, response };
};

describe.each(CURVES)('the response of the %s', (curve) => {
  const { analysis, response } = open({ curve });

  it('gives growth along each band’s curve as the analysis does, after a passage through JSON', () => {
    if (!('light' in analysis.bands)) throw new Error('expected two bands');
    for (const name of ['light', 'heavy'] as const) {
      const { fit, inference, at } = pick(response, name);
      expect(fit.studiedReserve).toEqual(analysis.bands[name].studiedReserve);
      for (const point of analysis.bands[name].curvePoints.filter((_, i) => i % 10 === 0)) {
        const found = inferContrast(inference, at(50, point.reserve), CONFIDENCE);
        expectWithin(found.estimate, point.estimate, 1e-12, `${name} at ${point.reserve}`);
        expectWithin(found.ciLow, point.ciLow, 1e-10, `${name} at ${point.reserve}, low`);
        expectWithin(found.df, point.df, 1e-10, `${name} at ${point.reserve}, df`);
      }
    }
  });

  it('has in the stack the same numbers as each fit alone', () => {
    if (!response.stacked) throw new Error('expected a stack');
    for (const { inference, at, inStack } of response.fits) {
      const row = at(62, 2);
      const alone = inferContrast(inference, row, CONFIDENCE);
      const stacked = inferContrast(response.stacked, inStack(row), CONFIDENCE);
      expectWithin(stacked.estimate, alone.estimate, 1e-12, 'estimate');
      expectWithin(stacked.standardError, alone.standardError, 1e-9, 'standard error');
      expectWithin(stacked.df, alone.df, 1e-9, 'df');
    }
  });
});

describe('the stack', () => {
  it('of the whole table as one band knows that the joint fit has the same rows', () => {
    // With load adjusted for and no interaction worth speaking of, both fits estimate the same growth,
    // so that their difference varies far less than two independent estimates would.
    const { response } = open({ split: null, adjust: ['load'], curve: 'line' });
    if (!response.stacked) throw new Error('expected a stack');
    const all = pick(response, 'all');
    const joint = pick(response, 'joint');
    const load = joint.fit.meanLoad ?? Number.NaN;
    const a = all.inStack(all.at(load, 2));
    const b = joint.inStack(joint.at(load, 2));
    const difference = inferContrast(
      response.stacked,
      a.map((value, j) => value - b[j]),
      CONFIDENCE,
    );
    const single = inferContrast(response.stacked, a, CONFIDENCE);
    expect(difference.standardError).toBeLessThan(0.3 * single.standardError);
  });
});

describe('the kept share', () => {
  let response: OpenResponse;
  beforeAll(() => {
    response = open({}).response;
  });

  it('at reserve 0 is all of it, without uncertainty', () => {
    const { inference, at } = pick(response, 'heavy');
    expect(inferKeptShare(inference, at(80, 0), at(80, 0), CONFIDENCE)).toEqual({ estimate: 1, low: 1, high: 1 });
  });

  it.each(['light', 'heavy'] as const)('with %s loads is the dual of the target', (name) => {
    const { analysis } = open({});
    if (!('light' in analysis.bands)) throw new Error('expected two bands');
    const { target } = analysis.bands[name];
    const { fit, inference, at } = pick(response, name);
    let inside = 0;
    for (let reserve = 0.25; reserve <= fit.studiedReserve.high; reserve += 0.25) {
      const share = inferKeptShare(inference, at(80, reserve), at(80, 0), CONFIDENCE);
      if (share?.low === undefined || share.low === null || share.high === null)
        throw new Error('expected an interval');
      const holdsShare = share.low <= target.keptShare && target.keptShare <= share.high;
      const inTarget = target.set.some(([low, high]) => low <= reserve && reserve <= high);
      expect(holdsShare, `reserve ${reserve}`).toBe(inTarget);
      if (inTarget) inside++;
      expect(share.low).toBeLessThanOrEqual(share.estimate);
      expect(share.high).toBeGreaterThanOrEqual(share.estimate);
    }
    expect(inside).toBeGreaterThan(0);
  });

  it('does not exist where growth at reserve 0 is not distinguishable from nothing', () => {
    const { inference, at } = pick(response, 'heavy');
    const nothing = at(80, 0).map(() => 0);
    nothing[1] = 1;
    // The slope is negative: as growth at failure it would be a loss.
    expect(inferKeptShare(inference, at(80, 2), nothing, CONFIDENCE)).toBeNull();
  });
});

function pick({ fits }: OpenResponse, source: string) {
  const found = fits.find(({ fit }) => fit.source === source);
  if (!found) throw new Error(`no fit of ${source}`);
  return found;
}
