import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { LongestFirst } from './support/longestFirst.ts';

// The browser tests need a built site: `npm test` builds before it runs them.
export default defineConfig({
  test: {
    root: '.',
    include: ['tests/**/*.test.ts'],
    // Limits against tests that never end, not bounds of speed: four times what the slowest has taken where other work kept
    // both processors busy.
    testTimeout: 240_000,
    hookTimeout: 240_000,
    sequence: { sequencer: LongestFirst },
    expect: { poll: { timeout: 60_000 } },
    // The scripts that tests start keep what Node made of their sources: a third of their time.
    env: { NODE_COMPILE_CACHE: fileURLToPath(new URL('../node_modules/.cache/scripts', import.meta.url)) },
  },
});
