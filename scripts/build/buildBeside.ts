/**
 * Builds beside the folder that is asked for and takes its place when everything is written: a build that fails, as
 * over a table with problems, leaves the site that was there before as it was.
 */
import { existsSync, mkdirSync, readdirSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { AstroIntegration } from 'astro';
import { publishFolder } from './publishFolder.ts';

/** Comes last of the integrations, so that the others have written what they write. */
export function buildBeside(): AstroIntegration {
  let target = '';
  let staging = '';
  return {
    name: 'build-beside',
    hooks: {
      'astro:config:setup': ({ command, config, updateConfig }) => {
        if (command !== 'build') return;
        target = followLink(fileURLToPath(config.outDir));
        refuseProject(target, fileURLToPath(config.root));
        staging = makeStaging(target);
        // Whatever ends the build; after its publication there is nothing left to remove.
        process.once('exit', () => rmSync(staging, { recursive: true, force: true }));
        updateConfig({ outDir: pathToFileURL(`${staging}/`) });
      },
      'astro:build:done': ({ logger }) => {
        publishFolder(staging, target);
        logger.info(`everything is written: it is in ${target} now`);
      },
    },
  };
}

/** The folder itself where a link stands for it, so that the link stays. */
function followLink(folder: string): string {
  const path = resolve(folder);
  return existsSync(path) ? realpathSync(path) : path;
}

/** The build takes the place of the folder: never of the project. */
function refuseProject(folder: string, root: string): void {
  const way = relative(folder, realpathSync(root));
  if (way === '..' || way.startsWith(`..${sep}`) || isAbsolute(way)) return;
  throw new Error(
    `the folder to build into (--outDir): expected one that does not hold the project, received ${folder}. Everything in it would be replaced; name a folder of its own, like dist.`,
  );
}

/**
 * An empty folder beside the target, on the same file system; in the system's folder for such things where nothing can
 * be written beside it. What a build that was killed left there is removed.
 */
function makeStaging(target: string): string {
  const prefix = `.${basename(target)}.building-`;
  const parent = dirname(target);
  try {
    mkdirSync(parent, { recursive: true });
    removeAbandoned(parent, prefix);
    return makeEmpty(join(parent, `${prefix}${process.pid}`));
  } catch {
    return makeEmpty(join(tmpdir(), `${prefix}${process.pid}`));
  }
}

function makeEmpty(folder: string): string {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  return folder;
}

function removeAbandoned(parent: string, prefix: string): void {
  for (const name of readdirSync(parent).filter((one) => one.startsWith(prefix))) {
    const [, pid] = /^(\d+)$/u.exec(name.slice(prefix.length)) ?? [];
    if (pid !== undefined && !isRunning(Number(pid))) rmSync(join(parent, name), { recursive: true, force: true });
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}
