/** Words of figures where a table is odd: a target that is lost, targets that are all one, one of a kind. */
import { describe, expect, it } from 'vitest';
import { stateAnalysis } from '../../scripts/terminal/report.ts';
import { deviationsByStudy } from '../../src/figures/deviationsByStudy.ts';
import { writeEquation } from '../../src/figures/equation.ts';
import { stateBestCurve, stateRobustness, stateSweep } from '../../src/figures/findings.ts';
import { formatSlope } from '../../src/figures/format.ts';
import { stateStrength } from '../../src/figures/outcomeFindings.ts';
import { stateHeterogeneity, stateReserveError } from '../../src/figures/panels.ts';
import { listPlotted } from '../../src/figures/plotted.ts';
import { targetsByRange } from '../../src/figures/targetsByRange.ts';
import { targetsByYear } from '../../src/figures/targetsByYear.ts';
import { targetsWithoutStudies } from '../../src/figures/targetsWithoutStudies.ts';
import { analyse } from '../../src/model/analyse.ts';
import { analyseInFull, type BandChecks } from '../../src/model/full.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { listTargets } from '../../src/practice/targetTable.ts';
import { drawPlot } from '../../src/site/drawFigure.ts';
import { shippedArms as arms, makeEvidence } from '../support/shippedFigures.ts';

const settings = settingsSchema.parse({});
const { analysis, sweep } = makeEvidence(arms, { swept: true });
if (!sweep) throw new Error('expected a sweep');

describe('findings of odd tables', () => {
  const heavyOf = (change: (checks: BandChecks) => Partial<BandChecks>) => {
    const { heavy } = analysis.checks;
    if (!heavy) throw new Error('expected checks');
    return { ...analysis, checks: { ...analysis.checks, heavy: { ...heavy, ...change(heavy) } } };
  };
  const influenceWith = (points: readonly (number | null)[]) =>
    heavyOf(({ influence }) => ({
      influence: {
        ...influence,
        studies: points.map((point, i) => ({
          ...influence.studies[i],
          targetWithout: { ...influence.studies[i].targetWithout, point, low: point, high: point },
        })),
      },
    }));

  it('name the studies without which there is no target, in words and in the title', () => {
    const all = 'light' in analysis.bands ? analysis.bands.heavy.target : null;
    if (!all) throw new Error('expected two bands');
    const said = (points: readonly (number | null)[]) => stateRobustness('heavy', influenceWith(points), sweep)[0];
    expect(said([all.point, 2])).toMatch(/^One study: leaving out \S+ \d+ moves the target .* to 2\.0 from 3\.2\.$/u);
    expect(said([all.point, all.point])).toBe(
      'One study: the target for heavy loads stays at 3.2 whichever is left out.',
    );
    expect(said([null, 2])).toMatch(/^One study: without one of them there is no target at all; leaving out/u);
    expect(said([null, null])).toBe('One study: whichever is left out, there is no target for heavy loads.');
    const titled = (points: readonly (number | null)[]) => {
      const { heavy } = influenceWith(points).checks;
      return targetsWithoutStudies(heavy.influence, all, 10, 'heavy').title;
    };
    expect(titled([3, 3])).toBe('Without any one study the target lies at 3.0');
    expect(titled([null, 2, 3])).toBe('Without one study the target lies from 2.0 to 3.0, or is lost (1 of 3)');
  });

  it('call no choice the one that moves targets most where all targets are one', () => {
    const { heavy } = sweep;
    const still = {
      ...heavy,
      atEdge: heavy.outcomes.length,
      quantiles: heavy.quantiles.map(() => 8),
      shares: heavy.shares.map(({ choice }) => ({ choice, share: 0 })),
    };
    expect(stateSweep('heavy', { ...sweep, heavy: still })).toMatch(
      /nine in ten targets for heavy loads lie at 8\.0, 1,440 at the largest reserve studied\.$/u,
    );
  });

  it('list a curve without a target, and say how far the next one is', () => {
    const { bands } = analysis;
    if (!('heavy' in bands)) throw new Error('expected two bands');
    const curves = bands.heavy.curves.map((one) =>
      one.curve === 'log' ? { ...one, target: { ...one.target, point: null } } : one,
    );
    const odd = { ...analysis, bands: { ...bands, heavy: { ...bands.heavy, curves } } };
    expect(stateRobustness('heavy', odd, sweep)[1]).toMatch(/none with a logarithm, /u);
    expect(stateBestCurve('heavy', odd.bands.heavy)).toMatch(
      /^With heavy loads, by AICc a flexible curve describes the rows best, by \d\.\d before a [\w ]+, too little to choose by\.$/u,
    );
    expect(stateBestCurve('heavy', { curves: curves.slice(0, 1) })).toBe('');
  });

  it('of the years name the last one where it gives no target, and one year once', () => {
    const cumulative = analysis.checks.heavy?.cumulative ?? [];
    const last = cumulative[cumulative.length - 1];
    const none = { ...last, year: 2030, target: { ...last.target, point: null, low: null, high: null } };
    expect(targetsByYear([last, none], 10, 'heavy').title).toBe('The target by year: 3.2 in 2024, none in 2030');
    expect(targetsByYear([last], 10, 'heavy').title).toBe('The target by year: 3.2 in 2024');
    expect(targetsByYear([last, none], 10, 'heavy').caption).toMatch(/1 of 2 years gives none\.$/u);
    // A gap where a year gives none, and the interval of each year, the last one too, as a line of its own.
    const figure = targetsByYear([last, none, { ...last, year: 2031 }], 10, 'heavy');
    expect(listPlotted(figure.plot)).toMatchObject([
      {
        drawnAs: 'area, line, rule, dot',
        rows: [{ year: last.year }, { point: null, low: null, high: null }, { year: 2031 }],
      },
    ]);
    const svg = drawPlot(figure);
    expect(svg).toMatch(/<path d="M[^"]*M/u);
    expect(svg).toMatch(/stroke-opacity="0\.6"[^>]*>(?:<line [^>]*?(?:\/>|><\/line>)){2}<\/g>/u);
  });

  it('count one study as one', () => {
    const [deviation] = analysis.checks.heavy?.deviations ?? [];
    const caption = (weighting: typeof settings.weighting) =>
      deviationsByStudy([deviation], 'heavy', { ...settings, weighting }).caption;
    expect(caption('mixed')).toMatch(/interval from sampling error and the variance between rows\.$/u);
    for (const weighting of ['precision', 'equal'] as const)
      expect(caption(weighting)).toMatch(/from sampling error; this weighting estimates no variance between rows\.$/u);
    expect(deviationsByStudy([{ ...deviation, low: 0.01, high: 0.02 }], 'heavy', settings).title).toBe(
      '1 of 1 study lies off the curve by more than its own error',
    );
    expect(stateStrength({ ...analysis.strength, rows: 1, studies: 1 }, settings)).toMatch(/\(1 row, 1 study\)/u);
  });

  it('of what a set can leave: no title allows more than the repetitions possible but one', () => {
    const wide = analyseInFull(arms, settingsSchema.parse({ keptShare: 0.5 }));
    const rows = listTargets(wide);
    const { title, caption } = targetsByRange(rows, { ...wide.settings, furthest: 10 });
    expect(rows[0].target.whole?.most).toBe(10);
    expect(title).toMatch(
      /: 5 where below 10 are possible, \d+ to 10 where 10 to 20|: 5 where below 10 are possible, 10 where 10 to 20/u,
    );
    expect(caption).toMatch(/no set leaves more than those possible but one/u);
  });

  it('show slopes in baseline SDs with a digit more, in one unit', () => {
    expect(formatSlope(-0.01234, 'log-ratio')).toBe('−1.23');
    expect(formatSlope(-0.01234, 'standardised')).toBe('−0.012');
    const check = analysis.checks.heavy?.reserveError;
    if (!check) throw new Error('expected a check');
    expect(stateReserveError({ ...check, corrected: 0.001, ratio: -0.5, rowsWithError: 1 }, 'log-ratio')).toMatch(
      /hundredths of the log ratio a repetition becomes 0\.10 .* of the other sign\. 1 row states an error; \d+ do not/u,
    );
  });
});

describe('words of a fit', () => {
  it('speak of one variance where each study has one row, and of two elsewhere', () => {
    const chosen = settingsSchema.parse({ split: null, curve: 'line' });
    const seen = new Set<string>();
    const firstRows = arms.filter(({ study, outcome, reserve_reps: reserve }) => {
      if (outcome !== 'growth' || reserve !== seen.size % 3 || seen.has(study)) return false;
      seen.add(study);
      return true;
    });
    const single = analyse(firstRows, chosen);
    if (!('all' in single.bands) || single.bands.all.failure) throw new Error('expected one fit');
    expect(single.bands.all.rows).toBe(single.bands.all.studies);
    expect(stateHeterogeneity(single.bands.all, 'log-ratio')).toMatch(
      /^True effects spread by [\d.]+(?: \(at its bound\))? between studies of one row each \(SD, /u,
    );
    const printed = stateAnalysis(single, 'a table');
    expect(printed).toContain('variance between studies of one row each ');
    expect(printed).not.toContain('between rows');
    const whole = analyse(arms, chosen);
    if (!('all' in whole.bands)) throw new Error('expected one band');
    expect(stateHeterogeneity(whole.bands.all, 'log-ratio')).toContain(' between rows of a study (SDs, ');
    expect(stateAnalysis(whole, 'a table')).toContain(', between rows ');
  });

  it('write covariates as they are fitted, less their mean, so that the equation gives the curve', () => {
    const adjusted = analyse(
      arms,
      settingsSchema.parse({ split: null, curve: 'line', adjust: ['load', 'training-status'] }),
    );
    if (!('all' in adjusted.bands)) throw new Error('expected one band');
    expect(writeEquation(adjusted.bands.all, adjusted)).toMatch(
      /^100 ln\(after \/ before\) = [\d.]+ [−+] [\d.]+ · reserve [−+] [\d.]+ · \(load − mean\) [−+] [\d.]+ · \(trained − mean\)$/u,
    );
  });

  it('print no p of 0', () => {
    if (!analysis.difference) throw new Error('expected two bands');
    const printed = stateAnalysis({ ...analysis, difference: { ...analysis.difference, p: 1e-9 } }, 'a table');
    expect(printed).toMatch(/^Heavy minus light, .* p <0\.0001\)$/mu);
  });

  it('name the interval by which a difference in strength lies inside the margin, where the one shown reaches beyond', () => {
    const { strength } = analysis;
    const { equivalence } = strength;
    if (!equivalence) throw new Error('expected strength');
    const said = (ciHigh: number) =>
      stateStrength(
        {
          ...strength,
          equivalence: {
            ...equivalence,
            verdict: 'inside',
            low: -0.002,
            high: 0.018,
            difference: { ...equivalence.difference, estimate: 0.008, ciLow: -0.005, ciHigh },
          },
        },
        settings,
      );
    expect(said(0.0215)).toContain(
      '(−0.5 to 2.2), inside the 2\u00a0% taken as the smallest difference worth having by the 90\u00a0% interval of two one-sided tests (−0.2 to 1.8).',
    );
    expect(said(0.019)).not.toContain('one-sided');
  });
});
