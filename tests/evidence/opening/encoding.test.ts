/** Bytes into text and back. Proven: each encoding with and without its mark, what is damaged, and that nothing else is taken for text. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeText, type Encoding, encodeText } from '../../../src/evidence/opening/encoding.ts';
import { openArms, readDraftNow } from '../../../src/evidence/opening/openTable.ts';
import { formatProblem } from '../../../src/evidence/problem.ts';
import { makeTable } from '../../support/tables.ts';

const TABLE = makeTable([{ study: 'Müller 2012', arm: 'à l’échec – “tout”' }]);
const encode = (text: string, encoding: Encoding) => encodeText(text, encoding) ?? new Uint8Array();
async function read(bytes: Uint8Array) {
  const draft = await openArms(bytes, 'own.csv');
  const { arms, problems } = readDraftNow(draft);
  return { study: arms[0]?.study, arm: arms[0]?.arm, said: draft.opened.said, problems: problems.map(formatProblem) };
}

describe('a table', () => {
  it.each<readonly [Encoding, string, RegExp | null]>([
    ['utf-8', '', null],
    ['utf-8', '\ufeff', null],
    ['utf-16le', '', /read as UTF-16 \(little-endian\)\.$/u],
    ['utf-16le', '\ufeff', /read as UTF-16 \(little-endian\)\.$/u],
    ['utf-16be', '', /read as UTF-16 \(big-endian\)\.$/u],
    ['utf-16be', '\ufeff', /read as UTF-16 \(big-endian\)\.$/u],
    ['windows-1252', '', /not UTF-8 and was read as Windows-1252: look whether these are right: ü à ’ é – “ ”$/u],
  ])('in %s with mark “%s” is read, and what was taken is said in a line', async (encoding, mark, said) => {
    const { study, arm, said: lines, problems } = await read(encode(mark + TABLE, encoding));
    expect(problems).toEqual([]);
    expect([study, arm]).toEqual(['Müller 2012', 'à l’échec – “tout”']);
    expect(lines).toHaveLength(said ? 1 : 0);
    if (said) expect(lines[0]).toMatch(said);
  });

  it('in UTF-8 with one damaged byte is told the line, and not read as Windows-1252', async () => {
    const bytes = encode(TABLE, 'utf-8');
    bytes[bytes.lastIndexOf(0xc3)] = 0xff;
    const { problems } = await read(bytes);
    expect(problems.join()).toMatch(/line 2: expected text encoded as UTF-8/u);
  });

  it('in UTF-8 in which characters were lost long ago is told the line, too', async () => {
    const { problems, said } = await read(encode(makeTable([{ arm: 'caf\ufffd' }]), 'utf-8'));
    expect(problems[0]).toMatch(/line 2: expected text encoded as UTF-8/u);
    expect(said).toEqual([]);
  });

  it.each([
    ['a byte that Windows-1252 has no letter for', 0x81],
    ['a zero', 0],
  ])('with %s among bytes that are not UTF-8 is refused', async (_what, byte) => {
    const bytes = encode(TABLE, 'windows-1252');
    bytes[bytes.length - 3] = byte;
    expect((await read(bytes)).problems.join()).toMatch(/expected text encoded as UTF-8/u);
  });

  it('with a zero in a cell is refused for it', async () => {
    const { problems } = await read(encode(makeTable([{ arm: 'a\0b' }]), 'utf-8'));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(/line 2, `arm`: .*Remove the line breaks and unseen characters/u);
  });
});

describe('text in any encoding', () => {
  it.each<Encoding>(['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'])('as %s comes back byte for byte', (encoding) => {
    let texts = 0;
    // Signs after a letter may be a character of UTF-8 in Windows-1252, ä–€ for instance: that cannot be told apart.
    const signs = encoding === 'windows-1252' ? '' : '€–’”łΩ';
    const letters = fc.constantFrom(...'abcDEF 0123,;\n"äéßñ', ...signs);
    fc.assert(
      fc.property(fc.array(letters, { minLength: 4, maxLength: 300 }), (some) => {
        // What is told from the others by its bytes alone begins with a header.
        const text = `study,year,design\n${some.join('')}`;
        const bytes = encode(text, encoding);
        const decoded = decodeText(bytes);
        expect(decoded.text).toBe(text);
        expect(encode(decoded.text, decoded.encoding)).toEqual(bytes);
        texts++;
      }),
      { seed: 21, numRuns: 200 },
    );
    expect(texts).toBe(200);
  });

  it('has no place in Windows-1252 for letters that are not in it', () => {
    expect(encodeText('ł', 'windows-1252')).toBeNull();
  });
});
