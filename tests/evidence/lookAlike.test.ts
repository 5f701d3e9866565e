/** Names that a reader takes for one and a table for two, and arms of the same people that do not say so. */
import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../src/evidence/problem.ts';
import { compareStudyLines } from '../../src/evidence/studyLines.ts';
import { readArms, readStudies } from '../../src/evidence/table.ts';
import { type Cells, makeTable } from '../support/tables.ts';

const warningsOf = (rows: readonly Cells[]) => {
  const { problems, warnings } = readArms(makeTable(rows), 'arms.csv');
  expect(problems.map(formatProblem)).toEqual([]);
  return warnings;
};

/** Spellings beside “Müller-Óg 2012”. */
const ALIKE: readonly (readonly [what: string, name: string])[] = [
  ['another normal form', 'Müller-Óg 2012'.normalize('NFD')],
  ['digits of full width', 'Müller-Óg ２０１２'],
  ['another case', 'MÜLLER-óg 2012'],
  ['a no-break space', 'Müller-Óg\u00a02012'],
  ['a thin space', 'Müller-Óg\u20092012'],
  ['two spaces', 'Müller-Óg  2012'],
  ['no space', 'Müller-Óg2012'],
  ['a joiner without width', 'Müller-\u200dÓg 2012'],
  ['a variation selector', 'Müller-Óg 2012\ufe0f'],
  ['a filler that nobody sees', 'Müller-Óg\u3164 2012'],
  ['a hyphen that does not break', 'Müller\u2011Óg 2012'],
  ['a dash', 'Müller–Óg 2012'],
  ['a minus sign', 'Müller−Óg 2012'],
  ['a letter of another script', 'Müllеr-Óg 2012'],
];

describe('two spellings of one name', () => {
  it.each(ALIKE)('that differ in %s are told with both lines', (_what, name) => {
    const warnings = warningsOf([{ study: 'Müller-Óg 2012' }, { study: name }, { study: name, arm: 'other' }]);
    expect(warnings.map(({ line, column, value }) => [line, column, value])).toEqual([[3, 'study', name]]);
    expect(warnings[0].expected).toMatch(/^“Müller-Óg 2012”, as line 2 writes what looks the same: character \d+ is /u);
    expect(formatProblem(warnings[0])).not.toMatch(/\p{Cf}|undefined/u);
  });

  it.each(ALIKE)(
    'that differ in %s are told between the two tables, and inside the table of studies',
    (_what, name) => {
      const { withoutLine, withoutArms } = compareStudyLines(
        { rows: [{ study: name, line: 7 }], file: 'arms.csv' },
        { rows: [{ study: 'Müller-Óg 2012', line: 4 }], file: 'studies.csv' },
      );
      expect(
        withoutLine.map(({ line, expected }) => [line, /line 4 there has “Müller-Óg 2012”, which/u.test(expected)]),
      ).toEqual([[7, true]]);
      expect(withoutArms.map(({ line, expected }) => [line, /line 7 there has “/u.test(expected)])).toEqual([
        [4, true],
      ]);

      const lines = ['Müller-Óg 2012', name].map((study) => `${study},Plover A,2012,Invented`);
      const { problems, warnings } = readStudies(['study,authors,year,title', ...lines].join('\n'), 'studies.csv');
      expect(problems).toEqual([]);
      expect(warnings.map(({ line, column }) => [line, column])).toEqual([[3, 'study']]);
    },
  );

  it('are told of arms and cohorts within a study, of exercises and muscles everywhere', () => {
    const columns = (first: Cells, second: Cells) => warningsOf([first, second]).map(({ column }) => column);
    expect(columns({ arm: 'to failure' }, { arm: 'To failure' })).toEqual(['arm']);
    expect(columns({ cohort: 'a' }, { cohort: 'A', arm: 'other' })).toEqual(['cohort']);
    expect(columns({ muscle: 'biceps brachii' }, { muscle: 'biceps\u00a0brachii', study: 'Wren 2013' })).toEqual([
      'muscle',
    ]);
    expect(columns({ exercise: 'leg press' }, { exercise: 'Leg press', study: 'Wren 2013' })).toEqual(['exercise']);
    expect(columns({ arm: 'A', cohort: 'a' }, { arm: 'a', cohort: 'A', study: 'Wren 2013' })).toEqual([]);
  });

  it('are not two names that differ in what is seen', () => {
    const names = ['Plover 2012', 'Plover 2012b', 'Plover 2013', 'Plovér 2012', 'Clover 2012', 'Plover & Wren 2012'];
    expect(warningsOf(names.map((study) => ({ study })))).toEqual([]);
  });
});

describe('arms of the same people', () => {
  const row = (arm: string, cohort: string, design = 'within-person', more: Cells = {}): Cells => ({
    arm,
    cohort,
    design,
    ...more,
  });
  const told = (rows: readonly Cells[]) => warningsOf(rows).map(({ line, column, value }) => [line, column, value]);

  it.each(['within-person', 'crossover'])('without a shared cohort are told, %s', (design) => {
    const warnings = warningsOf([row('left', '', design), row('right', '', design)]);
    expect(warnings.map(formatProblem)).toEqual([
      `line 3, \`cohort\`: expected a cohort that another arm of Plover 2012 has too, since \`design\` is ${design}; line 2 (left) has no cohort, received nothing. Give rows of the same people the same cohort; where the arms are other people, correct the design.`,
    ]);
    expect(told([row('left', 'a', design), row('right', 'b', design)])).toEqual([[3, 'cohort', 'b']]);
  });

  it('are told where one of several shares none, and where one row of an arm does not', () => {
    expect(told([row('left', 'c'), row('right', 'a'), row('third', 'a')])).toEqual([[2, 'cohort', 'c']]);
    const area = { measure: 'area' };
    expect(
      told([row('left', 'a'), row('right', 'a'), row('left', 'a', undefined, area), row('right', '', undefined, area)]),
    ).toEqual([[5, 'cohort', '']]);
  });

  it('are told outcome by outcome, since the outcomes are fitted apart', () => {
    const strength = { outcome: 'strength', measure: '1RM' };
    const rows = [
      row('left', 'a'),
      row('right', 'a'),
      row('left', '', undefined, strength),
      row('right', '', undefined, strength),
    ];
    expect(told(rows)).toEqual([[5, 'cohort', '']]);
  });

  it('are not told where they share, where there is one arm, and of other people', () => {
    expect(told([row('left', 'a'), row('right', 'a')])).toEqual([]);
    expect(told([row('1', 'a'), row('2', 'a'), row('3', 'b'), row('4', 'b')])).toEqual([]);
    expect(told([row('left', '')])).toEqual([]);
    expect(told([row('left', '', 'parallel'), row('right', '', 'parallel')])).toEqual([]);
  });
});
