/**
 * Numbers the islands of every built page. Astro's own ids are hashes of the folder that the project lies
 * in, so that the same commit would give other bytes on another machine; nothing reads them.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';

const ISLAND_ID = /(?<=<astro-island uid=")[^"]*(?=")/gu;

export function steadyIslands(): AstroIntegration {
  return {
    name: 'steady-islands',
    hooks: {
      'astro:build:done': ({ dir }) => {
        const root = fileURLToPath(dir);
        for (const name of readdirSync(root, { recursive: true, encoding: 'utf8' })) {
          if (!name.endsWith('.html')) continue;
          let islands = 0;
          const html = readFileSync(join(root, name), 'utf8');
          const numbered = html.replace(ISLAND_ID, () => String(++islands));
          if (islands > 0) writeFileSync(join(root, name), numbered);
        }
      },
    },
  };
}
