/** Plot says on the console what it finds odd in a figure; a test of figures fails where it said anything. */
import { afterEach, beforeEach, expect, vi } from 'vitest';

export function failOnWarnings(): void {
  let warn: ReturnType<typeof vi.spyOn>;
  beforeEach(() => {
    warn = vi.spyOn(console, 'warn');
  });
  afterEach(() => {
    expect(warn).not.toHaveBeenCalled();
    warn.mockRestore();
  });
}
