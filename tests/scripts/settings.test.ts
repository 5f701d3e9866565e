/** Settings files of the scripts: what is accepted, and what is said of a file that is not. */
import { describe, expect, it } from 'vitest';
import { CallError } from '../../scripts/terminal/call.ts';
import { readSettings } from '../../scripts/terminal/settings.ts';
import { defaultSettings } from '../../src/model/settings.ts';
import { useFolder } from '../support/runScript.ts';

const { file } = useFolder('settings');

function read(content: string, outcome?: string) {
  return readSettings(file('some.json', content), outcome);
}

/** The error of a call that must fail. */
function refusal(call: () => unknown): CallError {
  try {
    call();
  } catch (error) {
    if (error instanceof CallError) return error;
    throw error;
  }
  throw new Error('expected the call to be refused');
}

describe('settings', () => {
  it('without a file are the defaults', () => {
    expect(readSettings(undefined)).toEqual(defaultSettings);
  });

  it('of a file, with a byte-order mark or none, are completed with the defaults; the outcome of the call goes first', () => {
    expect(read('{"outcome": "growth", "rho": 0.2}', 'strength')).toEqual({
      ...defaultSettings,
      outcome: 'strength',
      rho: 0.2,
    });
    expect(read('\ufeff{"rho": 0.2}')).toEqual({ ...defaultSettings, rho: 0.2 });
  });

  it.each([
    ['that is empty', '', /some\.json: expected JSON such as .* The reader says: Unexpected end of JSON input\.$/u],
    ['with a comma too many', '{"rho": 0.2,}', /expected JSON .*\(line 1 column 13\)\.$/u],
    ['that is a list', '[]', /some\.json: expected object, received “\[\]”\.$/u],
    ['with a misspelt name', '{"keptshare": 0.8}', /expected one of outcome, .*keptShare, .* received “keptshare”\.$/u],
    [
      'with a misspelt name inside',
      '{"include": {"yearfrom": 3}}',
      /`include`: expected one of trainingStatus, .*“yearfrom”\.$/u,
    ],
    ['with a number out of range', '{"keptShare": 2}', /`keptShare`: expected number to be <1, received “2”\.$/u],
    [
      'with an unknown word',
      '{"curve": "linear"}',
      /`curve`: expected one of flexible, line, log, .* received “linear”\.$/u,
    ],
    [
      'with an unknown word in a list',
      '{"include": {"sex": ["man"]}}',
      /`include\.sex\.0`: expected one of female.*“man”\.$/u,
    ],
    [
      'with a number that stands for three',
      '{"assumedCorrelation": 4}',
      /`assumedCorrelation\.fatigue`: .* received “4”\.$/u,
    ],
    [
      'with a number as a text',
      '{"keptShare": "0.9"}',
      /`keptShare`: expected number, received “"0\.9"”\. Write it without quotation marks\.$/u,
    ],
    ['with a word for a number', '{"rho": "half"}', /`rho`: expected number, received “half”\.$/u],
  ])('of a file %s are refused with what was seen, where, and what was expected', (_what, content, message) => {
    const error = refusal(() => read(content));
    expect(error.exitCode).toBe(1);
    expect(error.message).toMatch(message);
  });

  it('name every problem of a file, a line each', () => {
    expect(refusal(() => read('{"rho": 2, "Split": 1, "curves": 1}')).message.split('\n')).toHaveLength(3);
  });

  it('with an outcome of the call that is none are a wrong call', () => {
    const error = refusal(() => read('{"rho": 0.2}', 'joy'));
    expect([error.exitCode, error.message]).toEqual([
      2,
      '--outcome: expected one of growth, strength, fatigue, received “joy”.',
    ]);
  });
});
