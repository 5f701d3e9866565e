/** What is edited, kept as text and read back exactly; whatever else is read is refused in a sentence. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toCsv } from '../../../src/practice/programme/csvView.ts';
import { type Draft, fromSaved, readDraft, writeDraft } from '../../../src/practice/programme/draft.ts';
import { addLine, changeCell, deleteLine, NO_LINES } from '../../../src/practice/programme/edit.ts';
import { writeSaved } from '../../../src/practice/programme/saved.ts';
import { exampleToTargets, exampleWeek, exercises, regatta } from './shipped.ts';

const saved = { first: exampleWeek, second: exampleToTargets, exercises: exercises.slice(0, 2), calendar: regatta };
const draft = (() => {
  const { draft: read } = fromSaved(saved);
  if (!read) throw new Error('expected a draft');
  return read;
})();

describe('a draft', () => {
  it('is read as it was written, ids and mistakes among it', () => {
    const edited: Draft = {
      ...draft,
      first: addLine(deleteLine(changeCell(draft.first, 1, 'load', '80 kg; "x"'), 2), 3, { note: '=1' }),
      second: null,
    };
    for (const one of [draft, edited, { ...edited, first: NO_LINES, exercises: [] }]) {
      expect(readDraft(writeDraft(one))).toEqual({ draft: one, problem: null });
    }
  });

  it('opens a file of the form before it', () => {
    const read = readDraft(writeSaved(saved));
    expect(read.problem).toBeNull();
    expect(read.draft && toCsv(read.draft.first)).toBe(toCsv(draft.first));
    expect(readDraft(writeSaved({ ...saved, first: '', second: null })).draft?.first).toEqual(NO_LINES);
    expect(readDraft(writeSaved({ ...saved, second: 'no table' })).problem).toMatch(/no row that names its columns/u);
  });

  const whole = JSON.parse(writeDraft(draft));
  const broken = (change: (content: typeof whole) => void) => {
    const content = structuredClone(whole);
    change(content);
    return readDraft(JSON.stringify(content));
  };

  it.each<[string, (content: typeof whole) => void, RegExp]>([
    [
      'an id that stands twice',
      (content) => {
        content.first.lines[1].id = content.first.lines[0].id;
      },
      /first: expected every line/u,
    ],
    [
      'an id that would be given again',
      (content) => {
        content.first.nextId = 2;
      },
      /first: expected every line/u,
    ],
    [
      'a column of no name',
      (content) => {
        content.first.lines[0].cells.colour = 'red';
      },
      /first.lines.0/u,
    ],
    [
      'a cell that is no text',
      (content) => {
        content.first.lines[0].cells.load = 80;
      },
      /first.lines.0.cells.load/u,
    ],
    [
      'a cell with a line break',
      (content) => {
        content.first.lines[0].cells.load = 'a\nb';
      },
      /one line of text/u,
    ],
    [
      'a calendar of another kind',
      (content) => {
        content.calendar.sessionHour = 24;
      },
      /calendar.sessionHour/u,
    ],
    [
      'another version',
      (content) => {
        content.version = 3;
      },
      /saved by a newer one than is open here/u,
    ],
    [
      'more than there should be',
      (content) => {
        content.third = [];
      },
      /third|the file/u,
    ],
  ])('with %s is refused, and says where', (_, change, problem) => {
    expect(broken(change)).toMatchObject({ draft: null, problem: expect.stringMatching(problem) });
  });

  it('behind a byte-order mark is read', () => {
    for (const text of [writeDraft(draft), writeSaved(saved)]) {
      expect(readDraft(`\ufeff${text}`)).toEqual(readDraft(text));
      expect(readDraft(text).problem).toBeNull();
    }
  });

  it('of any text, cut short or spoilt, throws nothing', () => {
    const text = writeDraft(draft);
    fc.assert(
      fc.property(fc.nat(text.length), fc.string({ maxLength: 3 }), fc.json(), (at, sign, json) => {
        for (const one of [text.slice(0, at), text.slice(0, at) + sign + text.slice(at + 1), json, sign]) {
          const { draft: read, problem } = readDraft(one);
          expect((read === null) === (problem !== null)).toBe(true);
        }
      }),
      { seed: 9, numRuns: 300 },
    );
    expect(readDraft('{"kind": "prog').problem).toMatch(/cut short or was changed/u);
    expect(readDraft('null').problem).toMatch(/expected a programme saved by this page/u);
  });
});
