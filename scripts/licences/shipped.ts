/**
 * Notes which packages the scripts, styles and fonts of the site are made of, refuses those whose licence
 * does not let them be sent to browsers, and writes the licences of the others to `licences.txt`, since
 * the scripts themselves carry no notices.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { statedLicence } from './installed.ts';
import { isMetBy, SHIPPED_LICENCES } from './policy.ts';

/** The part of Vite's plugin that is needed, for its pages and its workers. */
interface BundleWatcher {
  readonly name: string;
  generateBundle(this: { environment?: { name: string } }, options: unknown, bundle: Record<string, Output>): void;
}

/** A written file: a script with the modules in it, or another one with the files it was made from. */
interface Output {
  readonly type: string;
  readonly moduleIds?: readonly string[];
  readonly originalFileNames?: readonly string[];
}

/** Write lines of their own into pages with islands and into scripts that load others. */
const WRITERS = ['astro', 'rolldown', 'vite'];
const LICENCE_FILE = /^(?:licen[cs]e|copying|ofl|notice)(?:[-.].*)?$/iu;

export function shippedLicences(): AstroIntegration {
  const folders = new Set<string>();
  const watch = (isOurs: (environment: string | undefined) => boolean): BundleWatcher => ({
    name: 'shipped-licences',
    generateBundle(_, bundle) {
      const isScriptOurs = isOurs(this.environment?.name);
      for (const { moduleIds = [], originalFileNames = [] } of Object.values(bundle)) {
        // Fonts and pictures come from whichever build meets the style that names them.
        for (const id of [...(isScriptOurs ? moduleIds : []), ...originalFileNames]) {
          const folder = packageFolder(resolve(root, id.replace(/^\0/u, '')));
          if (folder) folders.add(folder);
        }
      }
    },
  });
  let root = '';
  return {
    name: 'shipped-licences',
    hooks: {
      'astro:config:setup': ({ updateConfig, config }) => {
        root = fileURLToPath(config.root);
        updateConfig({
          vite: { plugins: [watch((name) => name === 'client')], worker: { plugins: () => [watch(() => true)] } },
        });
      },
      'astro:build:done': ({ dir, logger }) => {
        for (const name of WRITERS) folders.add(join(root, 'node_modules', name));
        const packages = [...folders].map(describe).sort((a, b) => (a.title < b.title ? -1 : 1));
        const refused = packages.filter(({ licence }) => !isMetBy(licence, SHIPPED_LICENCES));
        if (refused.length > 0) {
          const list = refused.map(({ title, licence }) => `${title} (${licence})`).join(', ');
          throw new Error(`a script of the site contains a package that must not reach a browser: ${list}`);
        }
        writeFileSync(fileURLToPath(new URL('licences.txt', dir)), writeNotices(packages));
        logger.info(`licences.txt names ${packages.length} packages`);
      },
    },
  };
}

/** The folder of the package that a module is in; null for the site's own. */
function packageFolder(id: string): string | null {
  const [, folder] = /^(.*\/node_modules\/(?:@[^/]+\/)?[^/]+)\//u.exec(id) ?? [];
  return folder ?? null;
}

interface Shipped {
  /** Name and version. */
  readonly title: string;
  readonly licence: string;
  /** Texts of the licence files, as they come. */
  readonly texts: readonly string[];
}

function describe(folder: string): Shipped {
  const { name, version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const files = readdirSync(folder)
    .filter((file) => LICENCE_FILE.test(file))
    .sort();
  return {
    title: `${name} ${version}`,
    licence: statedLicence(folder),
    texts: files.length > 0 ? files.map((file) => readFileSync(join(folder, file), 'utf8').trim()) : keptText(name),
  };
}

/** Licences of packages that come without theirs, as their repositories have them. */
const KEPT_TEXTS = new URL('texts/', import.meta.url);

function keptText(name: string): readonly string[] {
  const file = new URL(`${name.replace('/', '__')}.txt`, KEPT_TEXTS);
  return existsSync(file) ? [readFileSync(file, 'utf8').trim()] : [];
}

/** Packages with the same texts share one notice. */
function writeNotices(packages: readonly Shipped[]): string {
  const line = '-'.repeat(72);
  const notices = new Map<string, string[]>();
  for (const { title, licence, texts } of packages) {
    const text = texts.join('\n\n') || 'Its package comes without the text of its licence.';
    notices.set(text, [...(notices.get(text) ?? []), `${title} (${licence})`]);
  }
  const written = [...notices].map(([text, titles]) => `${line}\n\n${titles.join('\n')}\n\n${text}`);
  return `Shy of Failure is under the MIT licence. Its pages are made with these packages:\n\n${written.join('\n\n')}\n`;
}
