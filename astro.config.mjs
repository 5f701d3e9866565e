import { fileURLToPath } from 'node:url';
import preact from '@astrojs/preact';
import { defineConfig } from 'astro/config';
import { buildBeside } from './scripts/build/buildBeside.ts';
import { serviceWorker } from './scripts/build/serviceWorker.ts';
import { readSiteAddress } from './scripts/build/siteAddress.ts';
import { startApart } from './scripts/build/startApart.ts';
import { shippedLicences } from './scripts/licences/shipped.ts';
import { standIns } from './scripts/standIns/index.ts';
import { steadyIslands } from './scripts/steadyIslands.ts';

const root = fileURLToPath(new URL('.', import.meta.url));
// BASE_PATH lets the site live under a sub-path of a host; SITE_URL makes addresses absolute.
const { site, base } = readSiteAddress(process.env);

export default defineConfig({
  output: 'static',
  publicDir: './src/assets/public',
  base,
  ...(site && { site }),
  trailingSlash: 'always',
  integrations: [preact(), startApart(), steadyIslands(), shippedLicences(), serviceWorker(), buildBeside()],
  // Workers as modules share chunks with the pages. Licence notes of libraries stand in one file, not in each script.
  vite: {
    plugins: [standIns(root)],
    build: { rolldownOptions: { output: { comments: { legal: false } } } },
    worker: {
      format: 'es',
      plugins: () => [standIns(root)],
      rolldownOptions: { output: { comments: { legal: false } } },
    },
  },
  // Scripts and styles by hash or from the site itself, nothing from elsewhere. Who may frame a page is a header's to say.
  security: {
    csp: {
      directives: [
        "default-src 'none'",
        "img-src 'self' data: blob:",
        "font-src 'self'",
        "connect-src 'self'",
        "worker-src 'self'",
        "manifest-src 'self'",
        "base-uri 'none'",
        "form-action 'none'",
      ],
    },
  },
  markdown: { syntaxHighlight: false },
  devToolbar: { enabled: false },
  build: { inlineStylesheets: 'never' },
});
