/// <reference types="vitest/config" />
import { getViteConfig } from 'astro/config';

// The browser tests need a built site: `npm test` builds before it runs them.
export default getViteConfig({
  test: { root: '.', include: ['tests/**/*.test.ts'], testTimeout: 30_000 },
});
