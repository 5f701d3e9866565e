/** Strange names of columns, asked about once. Proven on usual words, slips, other orders and rivals; nothing is renamed by itself. */
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { makeColumnFinder } from '../../../src/evidence/opening/likelyColumns.ts';
import { acceptLikely, answer, askAbout, openArms, readDraftNow } from '../../../src/evidence/opening/openTable.ts';
import { SYNONYMS } from '../../../src/evidence/opening/synonyms.ts';
import { ARM_COLUMNS } from '../../../src/evidence/schema.ts';
import { readArms } from '../../../src/evidence/table.ts';
import { type Cells, makeTable } from '../../support/tables.ts';

const NAMES = Object.keys(ARM_COLUMNS);
const open = (text: string) => openArms(new TextEncoder().encode(text), 'own.csv');
/** A table with some columns under other names; null takes a column out. */
function renamed(
  names: Readonly<Record<string, string | null>>,
  changes: readonly Cells[] = [{}, { arm: 'b' }],
): string {
  const [header, ...rows] = Papa.parse<string[]>(makeTable(changes)).data;
  const kept = header.flatMap((name, i) => (names[name] === null ? [] : [i]));
  return Papa.unparse([kept.map((i) => names[header[i]] ?? header[i]), ...rows.map((row) => kept.map((i) => row[i]))]);
}

describe('a name', () => {
  const find = makeColumnFinder(NAMES, SYNONYMS);
  it.each([
    ['follow-up mean', ['followup_mean']],
    ['FollowUpMean', ['followup_mean']],
    ['mean_followup', ['followup_mean']],
    ['followup_maen', ['followup_mean']],
    ['post', ['followup_mean']],
    ['Post SD', ['followup_sd']],
    ['pre', ['baseline_mean']],
    ['SD (mm)', ['baseline_sd', 'followup_sd', 'change_sd']],
    ['Sample size', ['n']],
    ['N', ['n']],
    ['RIR', ['reserve_reps']],
    ['%1RM', ['load_pct_1rm']],
    ['% of 1RM', []],
    ['Load (% 1RM)', ['load_pct_1rm']],
    ['reps', ['reps_per_set']],
    ['freq', ['sessions_per_week']],
    ['Author', ['study']],
    ['to failure?', ['attempted_failure']],
    ['failure', ['failure_definition', 'attempted_failure']],
    ['weather', []],
    ['', []],
    ['x'.repeat(1000), []],
  ])('“%s” may mean %s', (written, expected) => {
    expect(find(written)).toEqual(expected);
  });

  it('means no column by two words of the list that are the same, unless both are asked about', () => {
    const listed = Object.entries(SYNONYMS).flatMap(([name, words]) => words.map((word) => ({ name, word })));
    expect(listed.length).toBeGreaterThan(150);
    for (const { name, word } of listed) expect(find(word), word).toContain(name);
    for (const { word } of listed) expect(NAMES).not.toContain(word);
  });
});

describe('a table with a column by another name', () => {
  it('asks about it once, with what it holds, in place of its problems; after yes it is read with it', async () => {
    const text = renamed({ followup_mean: 'post' });
    const draft = await open(text);
    expect(readDraftNow(draft).problems.length).toBeGreaterThan(1);
    const { columns } = askAbout(draft);
    expect(columns).toEqual([
      {
        written: 'post',
        place: NAMES.indexOf('followup_mean'),
        values: ['43', '43'],
        candidates: [{ name: 'followup_mean', description: 'Mean after.', unit: null }],
        rivals: [],
      },
    ]);
    const accepted = answer(draft, { of: 'column', question: columns[0], name: 'followup_mean' });
    expect(accepted.text).toBe(text.replace('post', 'followup_mean'));
    expect(accepted.changes).toEqual(['the column post is now followup_mean']);
    expect(askAbout(accepted).columns).toEqual([]);
    expect(readDraftNow(accepted)).toEqual(readArms(makeTable([{}, { arm: 'b' }]), 'own.csv'));
    expect(acceptLikely(draft).text).toBe(accepted.text);
  });

  it('is left as it is after no, and not asked again', async () => {
    const draft = await open(renamed({ unit: 'Unit of measurement' }));
    const [question] = askAbout(draft).columns;
    const declined = answer(draft, { of: 'column', question, name: null });
    expect([declined.text, askAbout(declined).columns, declined.changes]).toEqual([draft.text, [], []]);
    expect(readDraftNow(declined)).toMatchObject({
      problems: [],
      warnings: [{ kind: 'unknown-column', column: 'Unit of measurement' }],
    });
  });

  it('that is a slip would be refused for it: after no the column says that it is not read', async () => {
    const draft = await open(renamed({ unit: 'untit' }));
    const [question] = askAbout(draft).columns;
    expect(readDraftNow(draft).problems).toHaveLength(1);
    const declined = answer(draft, { of: 'column', question, name: null });
    expect(declined.changes).toEqual(['the column untit is now untit (not read)']);
    expect(askAbout(declined).columns).toEqual([]);
    expect(readDraftNow(declined).problems).toEqual([]);
  });

  it('asks which, where a word may mean two; and two words that may mean one name each other', async () => {
    const which = await open(renamed({ baseline_sd: 'SD', followup_sd: null, change_sd: null }, [{ correlation: '' }]));
    expect(askAbout(which).columns[0].candidates.map(({ name }) => name)).toEqual([
      'baseline_sd',
      'followup_sd',
      'change_sd',
    ]);
    expect(acceptLikely(which).text).toBe(which.text);
    const rivals = await open(renamed({ followup_mean: 'post', change_mean: 'after' }, [{ change_mean: '43' }]));
    const questions = askAbout(rivals).columns;
    expect(questions.map(({ written, rivals }) => [written, rivals])).toEqual([
      ['post', ['after']],
      ['after', ['post']],
    ]);
    const answered = answer(rivals, { of: 'column', question: questions[0], name: 'followup_mean' });
    expect(askAbout(answered).columns).toEqual([]);
  });

  it('is not asked about where the column it may mean is there, or where its cells are something else', async () => {
    expect(askAbout(await open(renamed({ note: 'post' }))).columns).toEqual([]);
    expect(askAbout(await open(renamed({ followup_mean: 'post' }, [{ followup_mean: 'better' }]))).columns).toEqual([]);
  });

  it('of decimal commas is asked about first, and its commas then with the others', async () => {
    const text = renamed({ followup_mean: 'post' }, [
      { followup_mean: '43,25', baseline_sd: '6,5', followup_sd: '', correlation: '' },
    ]);
    const draft = await open(Papa.unparse(Papa.parse<string[]>(text).data, { delimiter: ';' }));
    const [question] = askAbout(draft).columns;
    const named = answer(draft, { of: 'column', question, name: 'followup_mean' });
    expect(askAbout(named).commas?.cells).toBe(2);
    expect(readDraftNow(answer(named, { of: 'commas', isYes: true })).problems).toEqual([]);
  });

  it('and 200,000 others is no header to ask about', async () => {
    const draft = await open(`${'post,'.repeat(200_000)}study\n1`);
    expect(askAbout(draft).columns).toEqual([]);
  });
});
