import { defineConfig } from 'vitest/config';

// The browser tests need a built site: `npm test` builds before it runs them.
export default defineConfig({
  test: { root: '.', include: ['tests/**/*.test.ts'], testTimeout: 30_000, expect: { poll: { timeout: 10_000 } } },
});
