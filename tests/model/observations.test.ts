/** Rows in the order of a fit: studies together, cohorts together, whatever the order of the table. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { arrangeEffects } from '../../src/model/bandFit.ts';
import { arrangeColumn, arrangeObservations, withoutStudy } from '../../src/model/observations.ts';
import { selectRows } from '../../src/model/selection.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { makeRandom } from '../../src/numerics/random.ts';

const { arms } = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const { effects } = selectRows(arms, settingsSchema.parse({}));

describe('observations', () => {
  const row = (study: string, cohort: string | null, y: number) => ({ study, cohort, y, v: 1 });
  const data = arrangeObservations([
    row('b', 'x', 1),
    row('a', null, 2),
    row('b', '', 3),
    row('a', 'x', 4),
    row('b', 'x', 5),
  ]);

  it('stand by study, and in it by cohort; a row without one is a group of its own', () => {
    expect(data.studies).toEqual(['a', 'b']);
    expect([...data.y]).toEqual([4, 2, 1, 5, 3]);
    expect([...data.studyStart]).toEqual([0, 2, 5]);
    // a: x, alone; b: x twice, alone. The same word in two studies is two cohorts.
    expect([...data.groupStart]).toEqual([0, 1, 2, 4, 5]);
    expect([...data.studyGroups]).toEqual([0, 2, 4]);
  });

  it('take a column of the list into their order', () => {
    expect([...arrangeColumn(data, [10, 20, 30, 40, 50])]).toEqual([40, 20, 10, 50, 30]);
  });

  it('may be none', () => {
    expect(arrangeObservations([])).toMatchObject({ n: 0, studies: [], studyStart: Int32Array.of(0) });
  });
});

describe('observations without a study', () => {
  // Rows in no order, so that a place in the list says nothing about a place in the fit.
  const { uniform } = makeRandom(7);
  const mixed = effects
    .map((effect) => ({ effect, at: uniform() }))
    .sort((a, b) => a.at - b.at)
    .map(({ effect }) => effect);
  const whole = arrangeEffects(mixed);

  it.each([0, 1, 17, whole.studies.length - 1])('%d are the others arranged anew', (k) => {
    const others = mixed.filter(({ arm }) => arm.study !== whole.studies[k]);
    const anew = arrangeEffects(others);
    const cut = withoutStudy(whole, k);
    expect(cut.n).toBe(others.length);
    expect(cut.studies).toEqual(anew.studies);
    for (const part of ['studyStart', 'studyGroups', 'groupStart'] as const) expect(cut[part]).toEqual(anew[part]);
    // Rows without a cohort may stand in another order inside their study.
    expect([...cut.source].sort((a, b) => a - b)).toEqual(others.map((_, i) => i));
    cut.source.forEach((index, row) => {
      expect([cut.y[row], cut.v[row]]).toEqual([others[index].y, others[index].v]);
    });
    for (let study = 0; study < cut.studies.length; study++) {
      for (let row = cut.studyStart[study]; row < cut.studyStart[study + 1]; row++) {
        expect(others[cut.source[row]].arm.study).toBe(cut.studies[study]);
      }
    }
  });
});
