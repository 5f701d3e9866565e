import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { LongestFirst } from './support/longestFirst.ts';

// The browser tests need a built site: `npm test` builds before it runs them.
export default defineConfig({
  test: {
    root: '.',
    include: ['tests/**/*.test.ts'],
    testTimeout: 30_000,
    // Removing a built site has taken more than 10 s, Vitest’s own limit, where the disk was busy.
    hookTimeout: 120_000,
    sequence: { sequencer: LongestFirst },
    expect: { poll: { timeout: 10_000 } },
    // The scripts that tests start keep what Node made of their sources: a third of their time.
    env: { NODE_COMPILE_CACHE: fileURLToPath(new URL('../node_modules/.cache/scripts', import.meta.url)) },
  },
});
