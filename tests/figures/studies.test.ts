/**
 * Figures and words of the Studies pages: what they say is what the reports hold, and they draw without
 * a warning. The pictures are held as snapshots with numbers rounded to 3 decimals.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { traceNumbers } from '../../src/evidence/provenance.ts';
import { readArms } from '../../src/evidence/table.ts';
import { stateEmptyRegion } from '../../src/figures/emptyRegionWords.ts';
import { evidenceMap } from '../../src/figures/evidenceMap.ts';
import { formatSignificant } from '../../src/figures/format.ts';
import { studyForest } from '../../src/figures/studyForest.ts';
import { outlineNumbers, showChange, showSpan, showWeight } from '../../src/figures/studyWords.ts';
import { analyse } from '../../src/model/analyse.ts';
import { mapEvidence } from '../../src/model/evidenceMap.ts';
import { analyseInFull } from '../../src/model/full.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { reportStudies } from '../../src/model/studyReports.ts';
import { drawPlot } from '../../src/site/drawFigure.ts';
import { failOnWarnings } from '../support/failOnWarnings.ts';
import { settleSvg } from '../support/settleSvg.ts';
import { type Cells, makeArms } from '../support/tables.ts';

const { arms } = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const settings = settingsSchema.parse({});
const analysis = analyseInFull(arms, settings);
const reports = reportStudies(arms, analysis);
const map = mapEvidence(arms, analysis);

failOnWarnings();

describe('the evidence map', () => {
  it('draws the shipped table as before', async () => {
    await expect(settleSvg(drawPlot(evidenceMap(map)))).toMatchFileSnapshot('evidence-map.svg');
  });

  it('has the counts and every empty region in its words, and a mark for each place', () => {
    const figure = evidenceMap(map);
    expect(map.regions.length).toBeGreaterThan(1);
    for (const text of [figure.caption, figure.alternative]) {
      expect(text).toContain(
        `${map.arms} arms and ${map.people.toLocaleString('en')} people of ${map.studies} studies`,
      );
      for (const region of map.regions) expect(text).toContain(`${stateEmptyRegion(region, map.split)}.`);
    }
    expect(figure.title.toLowerCase()).toContain(stateEmptyRegion(map.regions[0], map.split).toLowerCase());
    const svg = drawPlot(figure);
    const heavy = map.places.filter(({ band }) => band === 'heavy').length;
    expect(svg.match(/<circle/gu)).toHaveLength(heavy);
    expect(figure.table.rows).toHaveLength(map.cells.length);
  });

  it('of a table without load and reserve says so and draws nothing false', () => {
    const bare = makeArms([{ load_pct_1rm: '' }]);
    const figure = evidenceMap(mapEvidence(bare, analyse(bare, settings)));
    expect(figure.title).toBe('Growth: no arm reports both a load and a reserve');
    expect(figure.caption).toMatch(/0 arms and 0 people.*1 arm without a load or a reserve is not on the map/u);
    expect(drawPlot(figure)).not.toMatch(/<circle/u);
  });

  it('without a split tells no loads apart', () => {
    const together = settingsSchema.parse({ split: null });
    const { caption } = evidenceMap(mapEvidence(arms, analyse(arms, together)));
    expect(caption).not.toMatch(/light|heavy/u);
  });
});

describe('the forest of a study', () => {
  const reportOf = (study: string) => {
    const found = reports.find((report) => report.study === study);
    if (!found) throw new Error(`no ${study}`);
    return found;
  };

  it('draws a shipped study as before', async () => {
    await expect(settleSvg(drawPlot(studyForest(reportOf('Plover 1996'), settings)))).toMatchFileSnapshot(
      'study-forest.svg',
    );
  });

  it('of every shipped study counts its rows with and without an effect', () => {
    for (const report of reports) {
      const { table, caption } = studyForest(report, settings);
      const missing = report.rows.length - table.rows.length;
      expect(/(\d+) of \d+ rows? (?:has|have) no effect in %/u.exec(caption)?.[1] ?? '0', report.study).toBe(
        String(missing),
      );
    }
    expect(reports.some((report) => studyForest(report, settings).table.rows.length < report.rows.length)).toBe(true);
  });

  it('is counted in the number that grammar asks for', () => {
    const rows = makeArms([
      { followup_mean: '60', n: '40' },
      { arm: 'other', cohort: '', followup_mean: '40.1' },
      {
        arm: 'third',
        cohort: '',
        followup_mean: '',
        followup_sd: '',
        correlation: '',
        effect: '0.4',
        effect_variance: '0.02',
        effect_metric: 'standardised',
      },
    ]);
    const [report] = reportStudies(rows, analyseInFull(rows, settings));
    const { title, caption } = studyForest(report, settings);
    expect(title).toBe('1 of 2 changes is apart from 0 by more than sampling error');
    expect(caption).toMatch(/ 1 of 3 rows has no effect in %: what is printed gives one in baseline SDs only\.$/u);
  });

  it('counts the rows whose interval leaves out 0', () => {
    const [still, grown] = [
      { followup_mean: '40.1' },
      { study: 'Wren 2001', year: '2001', followup_mean: '60', n: '40' },
    ] satisfies Cells[];
    const titles = reportStudies(makeArms([still, grown]), analyseInFull(makeArms([still, grown]), settings)).map(
      (report) => studyForest(report, settings).title,
    );
    expect(titles).toEqual([
      '1 of 1 change is apart from 0 by more than sampling error',
      '0 of 1 change is apart from 0 by more than sampling error',
    ]);
  });
});

describe('a study whose paper prints changes without their spread', () => {
  const bare: Cells = { baseline_mean: '', baseline_sd: '', followup_mean: '', followup_sd: '', correlation: '' };
  const table = makeArms([
    { ...bare, percent_change: '-3.5' },
    { ...bare, arm: 'other', percent_change: '7.26', percent_change_sd: '5' },
    { ...bare, arm: 'third', unit: 'cm', change_mean: '0.2', change_sd: '0.1' },
  ]);
  const [report] = reportStudies(table, analyseInFull(table, settings));

  it('has them drawn without an interval, and counts with its reason what cannot be drawn', () => {
    const figure = studyForest(report, settings);
    expect(figure.table.rows.map(([line, , ...numbers]) => [line, ...numbers])).toEqual([
      ['2', '−3.5', 'not known', 'not known'],
      ['3', '7.3', '4.5', '10.1'],
    ]);
    expect(figure.caption).toMatch(
      /crosses changes without a variance, whose interval is not known\. 1 of 3 rows has no effect in %: it reports a change but no mean before/u,
    );
    expect(figure.title).toBe('1 of 1 change is apart from 0 by more than sampling error');
    expect(drawPlot(figure)).not.toMatch(/NaN/u);
  });

  it('has the change in its table with the reason why it is alone', () => {
    expect(report.rows.map(showChange)).toEqual([
      '−3.5\u00a0%, without an interval: it reports no standard deviation, which a variance needs',
      expect.stringMatching(/^7\.3.% \(4\.5 to 10\.1\)$/u),
      expect.stringMatching(/^none: it reports a change but no mean before/u),
    ]);
  });
});

describe('words', () => {
  it('show a change in its own metric, or why there is none', () => {
    const standardised = reports.flatMap(({ rows }) => rows).find(({ metric }) => metric === 'standardised');
    if (!standardised) throw new Error('expected a standardised row in the shipped table');
    expect(showChange(standardised)).toMatch(/^−?\d+\.\d\d\u00a0baseline SDs \(/u);
    expect(showChange({ ...standardised, effect: null, noEffect: 'it reports nothing' })).toBe(
      'none: it reports nothing',
    );
  });

  it('outline where numbers come from', () => {
    const outline = (cells: Cells) => {
      const table = makeArms([cells]);
      const [{ rows }] = reportStudies(table, analyseInFull(table, settings));
      return outlineNumbers(traceNumbers(table[0], rows[0].effect));
    };
    expect(outline({})).toBe('all reported');
    expect(outline({ correlation: '' })).toBe('assumed: correlation of before with after');
    expect(outline({ correlation: '', followup_mean: '', change_mean: '3', change_sd: '2' })).toBe(
      'recovered: mean after, correlation of before with after',
    );
    expect(outline({ n: '', n_total: '50', n_total_arms: '4' })).toBe('assumed: people');
    expect(outline({ reps_possible: '12', reps_per_set: '10', reserve_reps: '', attempted_failure: '' })).toBe(
      'recovered: repetitions in reserve',
    );
  });

  it('show spans and weights without claiming more digits than there are', () => {
    expect([showSpan({ low: 30, high: 75 }), showSpan({ low: 75, high: 75 }), showSpan(null)]).toEqual([
      '30 to 75',
      '75',
      'not reported',
    ]);
    expect([0.0648, 1, 0.00012, 0].map(showWeight)).toEqual([
      '6.5\u00a0%',
      '100.0\u00a0%',
      '0.01\u00a0%',
      '0.0\u00a0%',
    ]);
    expect([-0.123456, 12345, 0.00045].map((value) => formatSignificant(value, 3))).toEqual([
      '−0.123',
      '12300',
      '0.00045',
    ]);
  });
});
