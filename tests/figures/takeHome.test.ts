/**
 * The scripts to take home, really run: they fit the rows again in another language and agree with the
 * site. Where R or Python with numpy and scipy is not installed, that is said in one line and the
 * script is only written; CI installs both.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { packTakeHome } from '../../src/figures/takeHome/takeHome.ts';
import { type SettingsInput, settingsSchema } from '../../src/model/settings.ts';

const { arms } = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const folder = mkdtempSync(join(tmpdir(), 'take-home-'));
afterAll(() => rmSync(folder, { recursive: true }));

const works = (command: string, ...parameters: string[]) =>
  spawnSync(command, parameters, { stdio: 'ignore' }).status === 0;
const pythons = [process.env.SHY_PYTHON ?? '', '/usr/bin/python3', 'python3'].filter(Boolean);
const LANGUAGES = [
  { name: 'R', ending: '.R', command: works('Rscript', '--version') ? 'Rscript' : null },
  {
    name: 'Python',
    ending: '.py',
    command: pythons.find((python) => works(python, '-c', 'import numpy, scipy')) ?? null,
  },
];

const CASES: readonly [string, SettingsInput][] = [
  ['the defaults', {}],
  ['a logarithm and strongly shared errors', { curve: 'log', rho: 0.8 }],
  ['a parabola and no shared errors', { curve: 'quadratic', rho: 0 }],
  ['a spline adjusted for load', { curve: 'spline', adjust: ['load'], rho: 0.8 }],
  ['precision weights of all loads', { weighting: 'precision', split: null, curve: 'log' }],
  ['equal weights and the standardised metric', { weighting: 'equal', metric: 'standardised', curve: 'quadratic' }],
];

describe.each(CASES)('with %s', (_what, chosen) => {
  const files = packTakeHome(arms, settingsSchema.parse(chosen));
  const textOf = (ending: string) => files.find(({ name }) => name.endsWith(ending))?.text ?? '';

  it.each(LANGUAGES)('the script for $name prints the same numbers as the site', ({ name, ending, command }) => {
    const text = textOf(ending);
    expect(text).toMatch(/DEMONSTRATION: the studies behind these rows are invented/u);
    if (command === null) {
      console.log(`not run: ${name} is not installed here, so its script was only written`);
      return;
    }
    const file = join(folder, `script${ending}`);
    writeFileSync(file, text);
    const { status, stdout, stderr } = spawnSync(command, [file], { encoding: 'utf8' });
    expect(status, stderr).toBe(0);
    const largest = Number(/largest relative difference: (\S+)/u.exec(stdout)?.[1]);
    // Both climb to the maximum until steps are rounding; what is left is the difference of two roundings.
    expect(largest, stdout).toBeLessThan(1e-6);
  });

  it('the rows are those of the analysis, line by line', () => {
    const { bands } = JSON.parse(textOf('.json'));
    const lines = textOf('-rows.csv').trim().split('\n').slice(1);
    const rows = Object.values(bands as Record<string, { rows: number }>).reduce((sum, band) => sum + band.rows, 0);
    expect(lines).toHaveLength(rows);
  });
});
