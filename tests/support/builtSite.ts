/** The built site that tests of it read. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Path of `dist/`, without a slash at its end. */
export const dist = fileURLToPath(new URL('../../dist', import.meta.url));

if (!existsSync(`${dist}/index.html`)) throw new Error('dist/ has no index.html: run `npm run build` first');
