/** Lines judged for each lifter by the check of the programme itself, what a sheet tells of them, and what is to be looked at. */
import { describe, expect, it } from 'vitest';
import { explainRounding, listToLookAt, stateByLifter } from '../../../src/figures/lifterFindings.ts';
import { groupCautions } from '../../../src/practice/cautions.ts';
import { judgeLifters, type LifterLine } from '../../../src/practice/lifters/judge.ts';
import type { Lifter } from '../../../src/practice/lifters/lifter.ts';
import { headDay, weeksOf } from '../../../src/practice/lifters/sheet.ts';
import { explainLoad, roundingOf, tellCompany, tellLoad, tellSet } from '../../../src/practice/lifters/tellLine.ts';
import type { Cells } from '../../../src/practice/programme/editorColumns.ts';
import { checkLine } from '../../../src/practice/programme/line.ts';
import { readProgramme } from '../../../src/practice/programme/read.ts';
import { analysis, exercises } from '../programme/shipped.ts';
import { lifterWith, listOf, teamOf } from './people.ts';

const judge = (lines: readonly Partial<Cells>[], lifters: readonly Lifter[]) =>
  judgeLifters(analysis, { list: listOf(lines), lifters, exercises, status: 'trained' });
const one = (cells: Partial<Cells>, lifter = lifterWith({ squat: '140' })): LifterLine =>
  judge([cells], [lifter])[0].lines[0];
/** All that a lifter reads of a line. */
const sheetText = (line: LifterLine) =>
  [
    line.exercise,
    line.sets,
    line.repetitions,
    tellLoad(line.load),
    explainLoad(line.load),
    tellSet(line),
    tellCompany(line),
  ].join(' | ');

describe('a line for a lifter', () => {
  it('is what the programme’s check says of it at the load that the plates make', () => {
    const { checked } = one({ load: '78', reserve: '0', company: 'spotter' });
    // 107.5 of 140 kg.
    const text = `day,exercise,sets,repetitions,load,reserve,company\nMonday,squat,3,6,${(100 * 107.5) / 140},0,spotter\n`;
    const [line] = readProgramme(text, '', exercises).lines;
    const { against, unsafe, advised, plausibility } = checkLine(analysis, line, 'trained');
    expect(checked).toEqual({ line, against, unsafe, advised, plausibility });
    expect(against).toBe('closer');
  });

  it('without lifters is none, and with forty is forty', () => {
    expect(judge([{}], [])).toEqual([]);
    const team = teamOf(
      Array.from({ length: 40 }, (_, i) => ({ name: `Lifter ${i + 1}`, maxima: { squat: String(100 + i) } })),
    );
    const found = judge([{}, { load: '70' }], team.all);
    expect(found.map(({ lines }) => lines.length)).toEqual(Array.from({ length: 40 }, () => 2));
  });

  it('with a load above 1RM is not judged, is not to be lifted, and is nowhere as advised', () => {
    const line = one({ load: '150 kg', reserve: '3', company: 'spotter' });
    expect(line.checked).toBeNull();
    expect(line.problems).toEqual([]);
    expect(sheetText(line)).toMatch(
      /\| none \| 150\u00a0kg is more than your 1RM, 140\u00a0kg\. Do not lift it: ask your coach\. \| Ask your coach before this set\./u,
    );
    const [said] = listToLookAt({ lifter: lifterWith({}), lines: [line] });
    expect(said.place).toMatch(/squat, 150\u00a0kg$/u);
    expect(said.said).toEqual(['Above the 1RM of 140\u00a0kg: no set can be advised.']);
  });

  it('of a weight is judged for each: as advised for one, too close, too much, and not known for others', () => {
    const team = teamOf(
      [
        ['Lifter A', '140'],
        ['Lifter B', '95'],
        ['Lifter C', ''],
      ].map(([name, squat]) => ({ name, maxima: { squat } })),
    );
    const lines = judge([{ load: '100 kg', reserve: '3', company: 'spotter' }], team.all).map(
      ({ lifter: { name }, lines: [line] }) => ({ name, line }),
    );
    expect(stateByLifter(lines)).toEqual([
      'Lifter A (71.4\u00a0% of 1RM): as advised.',
      'Lifter B: above 1RM: it cannot be lifted once.',
      'Lifter C: no 1RM of squat given.',
    ]);
  });

  it('names lifters of one verdict together, the first twelve', () => {
    const team = teamOf(Array.from({ length: 14 }, (_, i) => ({ name: `L${i + 1}` })));
    const lines = judge([{ load: '100 kg' }], team.all).map(({ lifter: { name }, lines: [line] }) => ({ name, line }));
    expect(stateByLifter(lines)).toEqual([
      'L1, L2, L3, L4, L5, L6, L7, L8, L9, L10, L11, L12 and 2 more: no 1RM of squat given.',
    ]);
  });

  it('that is not safe is never asked for alone, judged or not', () => {
    for (const load of ['78', '100 kg', '']) {
      for (const lifter of [lifterWith({ squat: '140' }), lifterWith({})]) {
        const line = one({ load, possible: load === '' ? '8' : '', reserve: '0', company: 'alone' }, lifter);
        expect(line.unsafe, `${load} of ${JSON.stringify(lifter.maxima)}`).toBe(true);
        expect(tellSet(line)).toMatch(/^NOT ALONE: this exercise can pin you\./u);
        expect(line.cautions.join(' ')).toMatch(/Set safety arms or have a spotter/u);
      }
    }
  });

  it('of an exercise that nothing is known of takes the careful answers, and those that the line gives', () => {
    const unknown = one({ exercise: 'sled drag', load: '50 kg', reserve: '0' });
    expect([unknown.canPin, unknown.unsafe]).toEqual([true, true]);
    const described = one({ exercise: 'sled drag', load: '50 kg', reserve: '0', can_pin: 'no', stoppable: 'yes' });
    expect([described.canPin, described.unsafe, tellCompany(described)]).toEqual([false, false, null]);
    // Words that every object has of its own are no answer.
    const neither = one({ exercise: 'sled drag', load: '50 kg', reserve: '0', can_pin: 'constructor' });
    expect([neither.canPin, neither.unsafe]).toEqual([true, true]);
    expect(one({ exercise: 'sled drag', load: '50' }).problems).toEqual(['nothing is known of this exercise yet']);
  });

  it('whose repetitions do not fit the load sends the lifter to the coach, and names no other exercise', () => {
    const line = one({ load: '80', repetitions: '20', reserve: '2', company: 'spotter' });
    expect(line.checked?.against).toBe('questioned');
    expect(sheetText(line)).toMatch(
      /Ask your coach before this set: so many repetitions are not expected at this load\./u,
    );
    expect(sheetText(line)).not.toMatch(/bench/u);
    expect(listToLookAt({ lifter: lifterWith({}), lines: [line] })[0].said[0]).toMatch(
      /^Not judged\. Is the set right/u,
    );
  });

  it('tells ranges as they were written and half repetitions as the whole ones around them', () => {
    const line = one({ repetitions: '6-8', reserve: '1.5', sets: '3-4', load: '70-75%' });
    expect(sheetText(line)).toBe(
      'squat | 3 to 4 | 6 to 8 | 97.5 to 105\u00a0kg |  | End the set when you could do 1 to 2 more good repetitions. | It can pin you, and nothing would take the load.',
    );
  });

  it('that cannot be read is on the sheet as it stands, with what is wrong', () => {
    const line = one({ sets: 'three', reserve: '' });
    expect([line.sets, line.checked]).toEqual(['three', null]);
    expect(line.problems.join()).toMatch(/sets: expected .* received “three”/u);
    expect(tellSet(line)).toBe('Ask your coach: this line is not whole.');
  });

  it('says what rounding does where it makes a repetition’s difference', () => {
    const wide = lifterWith({ squat: '41' }, { step: '10' });
    // 32.8 kg become 30: 73.2 % in the place of 80.
    const line = one({ load: '80' }, wide);
    expect(roundingOf(line)?.points).toBeCloseTo(6.83, 2);
    expect(listToLookAt({ lifter: wide, lines: [line] })[0].said.join(' ')).toMatch(
      /^Rounded down by 6\.8 points of % of 1RM: about 3\.6 repetitions more are left/u,
    );
    // Whose average that is, is said once for the sheet.
    expect(explainRounding({ lifter: wide, lines: [line, line] })).toMatch(/bench press; squat may differ \(Nuzzo/u);
    expect(explainRounding({ lifter: wide, lines: [one({ load: '75' })] })).toBeNull();
    expect(roundingOf(one({ load: '75' }))).toBeNull();
    expect(listToLookAt({ lifter: wide, lines: [one({ load: '75', reserve: '3', company: 'spotter' })] })).toEqual([]);
  });
});

describe('a sheet', () => {
  const lines = judge(
    [
      { day: 'Wed' },
      { day: 'Mon', exercise: 'bench press', company: 'spotter' },
      { week: '2', day: 'Mon' },
      { day: 'someday' },
      { day: 'Mon', exercise: 'leg curl' },
    ],
    [lifterWith({})],
  )[0].lines;

  it('has the days of a week in their order, a page a week, and nothing left out', () => {
    const weeks = weeksOf(lines);
    expect(weeks.map(({ week, days }) => [week, days.map(({ day }) => headDay(day))])).toEqual([
      [1, ['Monday', 'Wednesday']],
      [2, ['Monday']],
      [null, ['Day not known']],
    ]);
    expect(
      weeks
        .flatMap(({ days }) => days.flatMap((day) => day.lines))
        .map(({ id }) => id)
        .sort(),
    ).toEqual([1, 2, 3, 4, 5]);
    expect(weeks[0].days[0].lines.map(({ exercise }) => exercise)).toEqual(['bench press', 'leg curl']);
  });

  it('says each caution once, of which exercises it is, and of benching only where there is benching', () => {
    const cautions = groupCautions(lines);
    expect(cautions.map(({ exercises: of }) => of)).toEqual([['squat'], ['bench press']]);
    expect(cautions[1].caution).toMatch(/Agree with the spotter/u);
    expect(JSON.stringify(cautions)).not.toMatch(/benching/u);
    const alone = judge([{ exercise: 'bench press' }], [lifterWith({})])[0].lines;
    expect(JSON.stringify(groupCautions(alone))).toMatch(/When benching alone/u);
  });
});
