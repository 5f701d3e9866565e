/** What the build hands over to a page is what the page takes over, or the build says that it cannot be. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { handOver, takeOver, writeHanded } from '../../src/ui/built.ts';

afterEach(() => vi.unstubAllGlobals());

/** A page with one data block in it. */
function openPage(id: string, textContent: string): void {
  vi.stubGlobal('document', { getElementById: (asked: string) => (asked === id ? { textContent } : null) });
}

describe('what the build hands over', () => {
  const value = { name: '</script><!-- “a” & b', numbers: [0.1, -1e-300, null], nested: { is: true } };

  it('is taken over in the build and in the page as it was, and no tag of it ends its block', () => {
    const handed = handOver('one', value);
    expect(takeOver(handed)).toEqual(value);
    const text = writeHanded(handed);
    expect(text).not.toContain('<');
    openPage('one', text);
    expect(takeOver(handed)).toEqual(value);
  });

  it('is refused where JSON would lose something of it', () => {
    const all = [Number.POSITIVE_INFINITY, Number.NaN, new Map([[1, 2]]), new Set([1]), [1, undefined], () => 1];
    for (const lost of [...all, new Float64Array(2)])
      expect(() => handOver('lost', { deep: [{ lost }] })).toThrow(/“lost” is .*cannot hold/u);
  });

  it('is missed by name where the page does not have it', () => {
    expect(() => writeHanded({ id: 'none' })).toThrow('no data block “none”');
    const handed = handOver('other', value);
    openPage('one', '{}');
    expect(() => takeOver({ id: 'none' })).toThrow('no data block “none”');
    expect(handed.id).toBe('other');
  });
});
