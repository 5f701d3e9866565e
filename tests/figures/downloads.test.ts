/** The files of a figure: one list for the site's pages and for those that a browser draws. */
import { describe, expect, it } from 'vitest';
import { FIGURE_FILES, groupFiles } from '../../src/figures/downloads.ts';
import { LIVE_FILES, REFERENCE_FILES } from '../../src/islands/figure/downloads.ts';
import { fileName } from '../../src/site/figures.ts';

describe('the files of a figure', () => {
  it('have a kind, an ending and a label that no other has', () => {
    for (const key of ['kind', 'ending', 'label'] as const)
      expect(new Set(FIGURE_FILES.map((file) => file[key])).size, key).toBe(FIGURE_FILES.length);
  });

  it('are made in a browser with the same endings and labels, PDF apart', () => {
    const pdf = FIGURE_FILES.filter(({ label }) => label.startsWith('PDF'));
    expect(pdf).toHaveLength(2);
    const live = [...LIVE_FILES, ...REFERENCE_FILES];
    expect(FIGURE_FILES.filter((file) => !live.some((one) => one === file))).toEqual(pdf);
    for (const { kind, ending } of live) expect(fileName('growth-light', kind).endsWith(ending), kind).toBe(true);
  });

  it('stand together by what they are for, in their order', () => {
    expect(groupFiles(FIGURE_FILES).map(([of, files]) => [of, files.length])).toEqual([
      ['Picture', 3],
      ['For print', 4],
      ['Numbers', 2],
      ['Reference', 3],
    ]);
    expect(groupFiles(FIGURE_FILES).flatMap(([, files]) => files)).toEqual(FIGURE_FILES);
  });
});
