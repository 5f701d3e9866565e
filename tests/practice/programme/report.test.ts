/**
 * The programme check. Intervals are proven against simulation from the fit: coefficients drawn from
 * their stacked covariance, growth then summed line by line in the plainest way. The calendar is proven
 * by hand. Tolerances of the simulation are four Monte-Carlo standard errors.
 */
import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { longProgramme } from '../../../scripts/measure/longProgramme.ts';
import { openResponse } from '../../../src/model/response.ts';
import { normalQuantile, studentQuantile } from '../../../src/numerics/distributions.ts';
import { makeRandom } from '../../../src/numerics/random.ts';
import type { CheckedLine } from '../../../src/practice/programme/line.ts';
import { type ProgrammeInput, reportProgramme } from '../../../src/practice/programme/report.ts';
import { expectRelative, expectWithin } from '../../support/closeness.ts';
import { analysis, exampleToTargets, exampleWeek, exercises, regatta } from './shipped.ts';

const HEADER = 'day,exercise,sets,repetitions,load,possible,reserve,company';
const report = (input: Partial<ProgrammeInput>) =>
  reportProgramme(analysis, { first: exampleWeek, second: null, exercises, calendar: regatta, ...input });
const both = report({ second: exampleToTargets });
const linesOf = (version: typeof both.first | null): readonly CheckedLine[] => {
  if (!version?.check) throw new Error('expected a checked version');
  return version.check.lines;
};

describe('a programme with an exercise that is asked about', () => {
  const known = `${HEADER}\nMonday,squat,4,6,80,,3,spotter\n`;
  const asked = `${known}Monday,sled drag,3,10,70,,0,alone\n`;

  it('has no sums: its session would be told without the line that waits', () => {
    const { first } = report({ first: asked, calendar: { ...regatta, event: null } });
    expect(first.asked.map(({ name }) => name)).toEqual(['sled drag']);
    expect(first.problems).toEqual([]);
    expect(first.check).toBeNull();
    expect(first.lines.map(({ line }) => line.exercise.name)).toEqual(['squat']);
  });

  it('is compared with no other', () => {
    expect(report({ first: known, second: asked }).comparison).toBeNull();
  });
});

describe('the worked example', () => {
  it('is a rowing club’s week whose second version follows the targets', () => {
    expect(both.first.problems).toEqual([]);
    expect(both.second?.problems).toEqual([]);
    const named = new Set(linesOf(both.first).map(({ line }) => line.exercise.name));
    expect([...named].sort()).toEqual([
      'barbell back squat',
      'bench pull',
      'leg press',
      'overhead press',
      'seated row',
      'split squat',
      'trunk work',
    ]);
    expect(linesOf(both.first).filter(({ against }) => against === 'inside').length).toBeLessThan(4);
    for (const { against, unsafe, line } of linesOf(both.second)) {
      expect(against, `line ${line.line}`).toBe('inside');
      expect(unsafe, `line ${line.line}`).toBe(false);
    }
  });

  it('names the sets that are unsafe alone, and says what binds them', () => {
    const unsafe = linesOf(both.first).filter((line) => line.unsafe);
    expect(unsafe.map(({ line }) => [line.day, line.exercise.name])).toEqual([[5, 'barbell back squat']]);
    expect(unsafe[0].cautions.join(' ')).toMatch(/safety arms or have a spotter/u);
    expect(unsafe[0].advised.reserve?.least).toBeGreaterThanOrEqual(1);
  });

  it('gains growth where sets were far from their targets and is recovered before the regatta', () => {
    const { comparison } = both;
    const legs = comparison?.muscles.find(({ muscle }) => muscle === 'quadriceps');
    expect(legs?.sets).toEqual({ first: 17, second: 17 });
    expect(legs?.difference?.ciLow).toBeGreaterThan(0);
    expect(comparison?.drop?.ciHigh).toBeLessThan(0);
    expect(both.first.check?.worst).toMatchObject({ day: 5, verdict: 'not in time', nearFailureBeforeEvent: true });
    expect(both.second?.check?.worst?.verdict).toBe('in time');
  });
});

describe('intervals of muscles and differences', () => {
  const draws = 20_000;
  const { stacked, fits } = openResponse(analysis.response);
  if (!stacked) throw new Error('expected a stacked fit');
  // Sums in another order leave the last digit unsymmetric.
  const covariance = Matrix.from1DArray(stacked.p, stacked.p, Array.from(stacked.covariance));
  const root = new CholeskyDecomposition(Matrix.add(covariance, covariance.transpose()).mul(0.5)).lowerTriangularMatrix;
  const random = makeRandom(5);
  const betas = Array.from({ length: draws }, () => {
    const z = Array.from({ length: stacked.p }, () => random.normal());
    return Array.from(
      stacked.coefficients,
      (value, i) => value + z.reduce((sum, one, j) => sum + root.get(i, j) * one, 0),
    );
  });
  /** Growth of a set in plain arithmetic: the curve 1, r, r², ln(1 + r), the joint one with its load terms. */
  const growth = (beta: readonly number[], load: number, reserve: number): number => {
    const names = fits.map(({ fit }) => fit.source);
    const near = Math.abs(load - 60) <= 10;
    const source = near ? 'joint' : load < 60 ? 'light' : 'heavy';
    const start = names.slice(0, names.indexOf(source)).reduce((sum, _, k) => sum + fits[k].inference.p, 0);
    const [a, b, c, d, e = 0, f = 0, g = 0, h = 0] = beta.slice(start, start + (near ? 8 : 4));
    const distance = near ? load - (fits[names.indexOf('joint')].fit.meanLoad ?? 0) : 0;
    const bend = (one: number, two: number, three: number) =>
      one * reserve + two * reserve ** 2 + three * Math.log(1 + reserve);
    return a + bend(b, c, d) + distance * (e + bend(f, g, h));
  };
  const meanGrowth = (beta: readonly number[], lines: readonly CheckedLine[], muscle: string) => {
    const own = lines.filter(({ line }) => line.exercise.muscles.includes(muscle));
    const sets = own.reduce((sum, { line }) => sum + line.sets, 0);
    return own.reduce((sum, { line }) => sum + line.sets * growth(beta, line.load, line.reserve), 0) / sets;
  };
  const spread = (values: readonly number[]) => {
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
  };

  it.each(['quadriceps', 'latissimus dorsi', 'obliques', 'triceps brachii'])(
    'for %s: the difference of two versions has the spread of draws from the fit',
    (muscle) => {
      const difference = both.comparison?.muscles.find((one) => one.muscle === muscle)?.difference;
      if (!difference) throw new Error('expected a difference');
      const found = betas.map(
        (beta) => meanGrowth(beta, linesOf(both.second), muscle) - meanGrowth(beta, linesOf(both.first), muscle),
      );
      const own = Array.from(stacked.coefficients);
      expectRelative(
        difference.estimate,
        meanGrowth(own, linesOf(both.second), muscle) - meanGrowth(own, linesOf(both.first), muscle),
        1e-9,
        'estimate',
      );
      expectRelative(difference.standardError, spread(found), 4 / Math.sqrt(2 * draws), 'standard error');
    },
  );

  it('would be too wide if the versions were taken as independent', () => {
    const difference = both.comparison?.muscles.find(({ muscle }) => muscle === 'quadriceps')?.difference;
    const independent = Math.hypot(
      spread(betas.map((beta) => meanGrowth(beta, linesOf(both.first), 'quadriceps'))),
      spread(betas.map((beta) => meanGrowth(beta, linesOf(both.second), 'quadriceps'))),
    );
    expect(difference?.standardError).toBeLessThan(0.5 * independent);
  });

  it('of a share kept by a muscle holds the middle 95 % of drawn shares', () => {
    const kept = both.first.check?.muscles.find(({ muscle }) => muscle === 'quadriceps')?.kept;
    if (!kept || kept.low === null || kept.high === null) throw new Error('expected an interval');
    const lines = linesOf(both.first);
    const atFailure = lines.map((checked) => ({ ...checked, line: { ...checked.line, reserve: 0 } }));
    const shares = betas
      .map((beta) => meanGrowth(beta, lines, 'quadriceps') / meanGrowth(beta, atFailure, 'quadriceps'))
      .sort((a, b) => a - b);
    // The draws are normal, the interval has t quantiles: wider by their ratio, with df near those of the difference.
    const low = shares[Math.floor(0.025 * draws)];
    const high = shares[Math.floor(0.975 * draws)];
    expect(kept.low).toBeLessThan(low);
    expect(kept.high).toBeGreaterThan(high);
    const df = both.comparison?.muscles.find(({ muscle }) => muscle === 'quadriceps')?.difference?.df ?? Number.NaN;
    const wider = studentQuantile(0.975, df) / normalQuantile(0.975);
    expectRelative(kept.high - kept.low, wider * (high - low), 0.15, 'width');
  });
});

describe('a version against itself', () => {
  it('is not different, and says so', () => {
    const { comparison } = report({ second: exampleWeek });
    expect(comparison?.overall).toMatchObject({ difference: null, reason: 'both versions train it alike' });
    expect(comparison?.drop).toBeNull();
    expect(comparison?.dropReason).toBe('both versions leave the same');
  });

  it('is alike also where the evidence does not speak of one of its lines', () => {
    const text = `${HEADER}\nMon,arm curl,3,5,40,,25,alone\nMon,pull-up,3,10,75,,2,alone\n`;
    const { comparison, first } = report({ first: text, second: text });
    expect(first.check?.overall.leftOut).toEqual([2]);
    expect(comparison?.overall.reason).toBe('both versions train it alike');
  });

  it('has no difference where one version does not train a muscle, or in no way that was studied', () => {
    const of = (first: string, second: string) =>
      report({ first: `${HEADER}\n${first}\n`, second: `${HEADER}\n${second}\n` }).comparison?.muscles[0];
    expect(of('Mon,arm curl,3,5,40,,2,alone', 'Mon,leg curl,3,5,40,,2,alone')?.reason).toBe(
      'only version one trains it',
    );
    expect(of('Mon,arm curl,3,5,40,,2,alone', 'Mon,arm curl,3,5,40,,25,alone')?.reason).toBe(
      'a version has no line that the evidence speaks of',
    );
  });

  it('with twice the sets everywhere is not held to bring more', () => {
    const doubled = exampleWeek.replace(/^(\w+,[^,]+),(\d+),/gmu, (_, head, sets) => `${head},${2 * Number(sets)},`);
    expect(report({ second: doubled }).comparison?.overall.difference).toBeNull();
  });
});

describe('the calendar', () => {
  const check = (lines: string, calendar = regatta) => report({ first: `${HEADER}\n${lines}\n`, calendar }).first.check;

  it('counts the hours from a session to the event and takes the session’s fewest in reserve', () => {
    const [session] = check('Thu,arm curl,3,10,75,,3,alone\nThu,seated row,2,10,75,,1,alone')?.sessions ?? [];
    // Thursday 19:00 to Saturday 10:00.
    expect(session).toMatchObject({ day: 4, sets: 5, reserve: 1, hoursToEvent: 39 });
  });

  it('works the drop at the event out as the fatigue model has it', () => {
    const trained = analysis.fatigue.byStatus.find(({ status }) => status === 'trained');
    const [session] = check('Fri,arm curl,3,10,75,,2,alone')?.sessions ?? [];
    const start = (trained?.start?.estimate ?? Number.NaN) + 2 * (trained?.perReserve?.estimate ?? Number.NaN);
    expectWithin(
      session.drop?.estimate ?? Number.NaN,
      start * Math.exp(-15 / (trained?.decay?.hours ?? Number.NaN)),
      1e-12,
      'drop',
    );
  });

  it('says nothing of sessions after the event, nor without one', () => {
    const [after] = check('Sunday,arm curl,3,10,75,,2,alone')?.sessions ?? [];
    expect(after).toMatchObject({ hoursToEvent: null, verdict: null, drop: null, nearFailureBeforeEvent: false });
    const [none] = check('Mon,arm curl,3,10,75,,2,alone', { ...regatta, event: null })?.sessions ?? [];
    expect(none).toMatchObject({ hoursToEvent: null, verdict: null, drop: null });
  });

  it('marks failure within 48 hours of the event, 24 when accustomed (common practice, no source)', () => {
    const marked = (status: 'trained' | 'untrained') =>
      check('Thu,arm curl,3,10,75,,0,alone\nFri,arm curl,3,10,75,,0,alone', { ...regatta, status })?.sessions.map(
        ({ nearFailureBeforeEvent }) => nearFailureBeforeEvent,
      );
    expect(marked('trained')).toEqual([false, true]);
    expect(marked('untrained')).toEqual([true, true]);
  });
});

describe('a programme that the evidence does not speak of', () => {
  it('has no share beyond the studied reserve, and its muscle names the line', () => {
    const { first } = report({ first: `${HEADER}\nMon,arm curl,3,5,40,,25,alone\nMon,seated row,3,10,75,,2,alone\n` });
    expect(first.check?.lines[0].kept.reason).toMatch(/more reserve than any that was studied/u);
    expect(first.check?.muscles.find(({ muscle }) => muscle === 'biceps brachii')?.leftOut).toEqual([2]);
  });

  it('is not summed up while it has problems', () => {
    const { first } = report({ first: `${HEADER}\nMon,arm curl,3,5,40,,2,alone\nMon,arm curl,x,5,40,,2,alone\n` });
    expect(first.check).toBeNull();
    expect(first.problems.length).toBe(1);
  });
});

describe('a programme of 500 lines', () => {
  it('is checked line by line', () => {
    const { first } = report({ first: longProgramme(exercises, 500, 4) });
    expect(first.problems).toEqual([]);
    expect(first.check?.lines.map(({ line }) => line.line)).toEqual(Array.from({ length: 500 }, (_, i) => i + 2));
  });
});
