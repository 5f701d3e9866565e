/**
 * The page of the published trials says what a fit leaves out and why, as the analysis has it. Where this fails because
 * a reason or a number has changed, the table that is expected is the one to put there.
 */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { analyse } from '../../src/model/analyse.ts';
import { listBands } from '../../src/model/bands.ts';
import { settingsSchema } from '../../src/model/settings.ts';

const { arms } = readArms(readFileSync('data/published/arms.csv', 'utf8'), 'arms.csv');
const page = readFileSync('data/published/README.md', 'utf8');
const [, listed] = /<!-- left out: begin -->\n([\s\S]*?)\n<!-- left out: end -->/u.exec(page) ?? [];

const OUTCOMES = ['growth', 'strength'] as const;

it('names every reason with its rows, and what is left for each fit', () => {
  const reasons = new Map<string, [growth: number, strength: number]>();
  const kept = OUTCOMES.map((outcome, i) => {
    const { rows, bands } = analyse(arms, settingsSchema.parse({ outcome }));
    for (const { reason } of rows.excluded.filter(({ reason }) => !reason.startsWith('measures '))) {
      // Lines and weeks of single rows: the kind of reason counts.
      const kind = reason.replaceAll(/(?<![\w])\d+(?:\.\d+)?(?=[ ,;]|$)/gu, '…');
      const counts = reasons.get(kind) ?? [0, 0];
      counts[i]++;
      reasons.set(kind, counts);
    }
    const measured = arms.filter((arm) => arm.outcome === outcome).length;
    const left = rows.excluded.filter(({ reason }) => !reason.startsWith('measures ')).length;
    expect(rows.included + left).toBe(measured);
    return listBands(bands).map(([name, { rows, studies }]) => ({ name, rows, studies }));
  });
  const lines = [...reasons]
    .sort(([a, [g, s]], [b, [h, t]]) => h + t - (g + s) || (a < b ? -1 : 1))
    .map(([reason, [growth, strength]]) => `| ${reason} | ${growth} | ${strength} |`);
  const there = (['light', 'heavy'] as const).map((name) => {
    const cells = kept.map((bands) => bands.find((band) => band.name === name));
    return `| **there for the fit of ${name} loads** | ${cells.map((band) => `${band?.rows}, of ${band?.studies} studies`).join(' | ')} |`;
  });
  const expected = ['| rows left out because … | growth | strength |', '| --- | --- | --- |', ...lines, ...there];
  expect(listed).toBe(expected.join('\n'));
});
