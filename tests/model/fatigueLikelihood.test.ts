/**
 * The profile of fatigue's recovery against one that whitens and solves the rows at every T it looks at.
 * Both search T to 1e-7 of its range, where l is flat: 1e-9 of |l| is above what that leaves.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { toObservations } from '../../src/model/bandFit.ts';
import { FatigueLikelihood, LEAST_HOURS, MOST_HOURS } from '../../src/model/fatigueLikelihood.ts';
import { logLikelihoods } from '../../src/model/likelihood.ts';
import { arrangeColumn, arrangeObservations } from '../../src/model/observations.ts';
import { selectRows } from '../../src/model/selection.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { estimateVarianceComponents } from '../../src/model/varianceComponents.ts';
import { maximiseOnInterval } from '../../src/numerics/roots.ts';
import { expectRelative } from '../support/closeness.ts';

const { arms } = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const all = selectRows(arms, settingsSchema.parse({ outcome: 'fatigue', split: null })).effects;
const RHO = 0.5;
const MARGIN = 0.02;

describe.each(['untrained', 'trained'] as const)('with %s people', (status) => {
  const effects = all.filter(({ arm }) => arm.training_status === status);
  const likelihood = new FatigueLikelihood(effects, RHO);
  const data = arrangeObservations(toObservations(effects).map((one) => ({ ...one, y: -one.y })));
  const reserves = effects.map(({ arm }) => arm.reserve_reps ?? Number.NaN);
  const fadeOf = (hours: number) => effects.map(({ arm }) => Math.exp(-(arm.hours_after ?? Number.NaN) / hours));
  const columnsOf = (hours: number) => {
    const fade = fadeOf(hours);
    return [fade, fade.map((value, i) => value * reserves[i])].map((column) => arrangeColumn(data, column));
  };
  const componentsAt = (hours: number) => estimateVarianceComponents(data, columnsOf(hours), RHO, ['ml']).ml;

  it('reads rows of several studies and hours', () => {
    expect(likelihood.refuse()).toBeNull();
    expect(new Set(effects.map(({ arm }) => arm.hours_after)).size).toBeGreaterThan(2);
  });

  it.each([2, 20, 200])('l at T of %d h is that of the mixed model there', (hours) => {
    expectRelative(likelihood.profile(Math.log(hours)), componentsAt(hours).logLikelihood, 1e-12, `l at ${hours} h`);
  });

  it.each([8, 25])('with the variances of T = %d h held, l is that of the rows whitened anew', (hours) => {
    const { tau2, omega2 } = componentsAt(hours);
    const at = { tau2, omega2, rho: RHO };
    const { best, ofRecovery } = likelihood.holdVariances(hours, MARGIN);
    expectRelative(best, logLikelihoods(data, columnsOf(hours), at).ml, 1e-12, 'l at T itself');
    for (const reserve of [0, 2, 4]) {
      for (const recovery of [0, 6, 30, 90, 400]) {
        const slow = maximiseOnInterval(
          (logHours) => {
            const decay = Math.exp(logHours);
            const fade = fadeOf(decay);
            const start = MARGIN * Math.exp(recovery / decay);
            const f = arrangeColumn(data, fade);
            const slope = arrangeColumn(
              data,
              fade.map((value, i) => value * (reserves[i] - reserve)),
            );
            return logLikelihoods({ ...data, y: data.y.map((y, i) => y - start * f[i]) }, [slope], at).ml;
          },
          Math.log(LEAST_HOURS),
          Math.log(MOST_HOURS),
        ).value;
        const label = `l with recovery of reserve ${reserve} after ${recovery} h`;
        expectRelative(ofRecovery(reserve, recovery), slow, 1e-9, label);
      }
    }
  });
});
