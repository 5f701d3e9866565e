import preact from '@astrojs/preact';
import { defineConfig } from 'astro/config';

// BASE_PATH lets the site live under a sub-path of a host; SITE_URL makes addresses absolute.
export default defineConfig({
  output: 'static',
  publicDir: './src/assets/public',
  base: process.env.BASE_PATH ?? '/',
  ...(process.env.SITE_URL ? { site: process.env.SITE_URL } : {}),
  trailingSlash: 'always',
  integrations: [preact()],
  devToolbar: { enabled: false },
  build: { inlineStylesheets: 'never' },
});
