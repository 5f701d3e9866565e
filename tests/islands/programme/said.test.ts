/** What is said aloud of the last step: of it alone, and true of what stands there. */
import { describe, expect, it } from 'vitest';
import { sayCounts } from '../../../src/islands/programme/appliedWords.ts';
import { createEditing } from '../../../src/islands/programme/editing.state.ts';
import { createWeeks } from '../../../src/islands/programme/weeks.state.ts';
import type { AppliedAdvice } from '../../../src/practice/programme/applyAdvice.ts';
import { addLine, NO_LINES } from '../../../src/practice/programme/edit.ts';
import { regatta } from '../../practice/programme/shipped.ts';

const squat = addLine(NO_LINES, 0, { day: 'Monday', exercise: 'squat' });
const example = { first: squat, second: null, exercises: [], calendar: regatta };

describe('what was done last', () => {
  it('is not said again with what is done after it, step or none', () => {
    const editing = createEditing(example);
    editing.copy('first', 1);
    expect(editing.said.peek()).toBe('Line 1 was copied below, as line 2.');
    editing.tell('“Tusday” is taken as Tuesday.');
    expect(editing.said.peek()).toBe('“Tusday” is taken as Tuesday.');
    editing.setList('first', editing.listOf('first'), 'nothing');
    editing.say('Nothing was changed.');
    expect(editing.said.peek()).toBe('Nothing was changed.');
    editing.step(editing.draft.peek(), 'nothing');
    editing.say('Done.');
    expect(editing.said.peek()).toBe('Done.');
  });
});

describe('a step that can be undone', () => {
  const labelOf = (editing: ReturnType<typeof createEditing>) => editing.history.peek().past.at(-1)?.label;

  it('names its version where there are two', () => {
    const editing = createEditing(example);
    editing.copy('first', 1);
    expect(labelOf(editing)).toBe('copy line 1');
    editing.setList('second', squat, 'apply the advice');
    expect(labelOf(editing)).toBe('apply the advice');
    editing.setCell('second', 1, 'sets', '4');
    expect(labelOf(editing)).toBe('change sets of line 1 in version two');
    createWeeks(editing).copy('first', 1);
    expect(labelOf(editing)).toBe('copy week 1 as week 2 in version one');
  });
});

describe('what applying the advice did', () => {
  const found = (moves: number, left: number, unchecked: number) =>
    ({ moves: Array(moves).fill({}), left: Array(left).fill({}), unchecked: Array(unchecked).fill(1) }) as Pick<
      AppliedAdvice,
      'moves' | 'left' | 'unchecked'
    >;

  it.each([
    [[4, 1, 0], true, 'Version two: 4 lines changed, 1 left as written.'],
    [[1, 0, 0], true, 'Version two: 1 line changed.'],
    [[0, 1, 1], true, 'Version two: nothing was changed, 2 lines left as written.'],
    [[0, 1, 0], false, 'Nothing was changed, 1 line left as written.'],
    [[0, 0, 0], false, 'Nothing was changed.'],
  ] as const)('of %j with version two %s is counted', ([moves, left, unchecked], hasSecond, said) => {
    expect(sayCounts(found(moves, left, unchecked), hasSecond)).toBe(said);
  });
});
