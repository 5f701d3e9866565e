/** What systems read to install the site as an app of its own (Web Application Manifest, W3C). */
import type { APIRoute } from 'astro';
import { ICONS } from '../site/icons.ts';
import { pathTo, site } from '../site/site.ts';
import { themeColours } from '../site/themeColours.ts';

const MANIFEST = {
  id: pathTo(''),
  name: site.name,
  description: `How many repetitions may stay in reserve, from a table of study arms.${
    site.demonstration ? ' A demonstration: the studies are invented.' : ''
  }`,
  lang: 'en',
  dir: 'ltr',
  start_url: pathTo(''),
  scope: pathTo(''),
  display: 'standalone',
  // A manifest has one colour; the pages say theirs for light and for dark.
  background_color: themeColours.light,
  theme_color: themeColours.light,
  icons: [
    { src: pathTo('favicon.svg'), sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
    ...ICONS.map(({ name, size, purpose }) => ({
      src: pathTo(`icons/${name}.png`),
      sizes: `${size}x${size}`,
      type: 'image/png',
      purpose,
    })),
  ],
  shortcuts: [
    { name: 'Target', url: pathTo('target/') },
    { name: 'Programme', url: pathTo('programme/') },
  ],
};

export const GET: APIRoute = () =>
  new Response(JSON.stringify(MANIFEST), { headers: { 'content-type': 'application/manifest+json' } });
