/** The scripts to take home, written to files and really run, many in one process where starting one is slow. */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Arm } from '../../src/evidence/schema.ts';
import { packTakeHome, type Steps } from '../../src/figures/takeHome/takeHome.ts';
import type { Settings } from '../../src/model/settings.ts';

const read = (name: string) => readFileSync(new URL(`../../src/figures/takeHome/${name}`, import.meta.url), 'utf8');
export const steps: Steps = { r: read('steps.R'), python: read('steps.py') };

const works = (command: string, ...parameters: string[]) =>
  spawnSync(command, parameters, { stdio: 'ignore' }).status === 0;
const pythons = [process.env.SHY_PYTHON ?? '', '/usr/bin/python3', 'python3'].filter(Boolean);

/** `command` is null where the language, or what the scripts need of it, is not installed. */
export const LANGUAGES = [
  { name: 'R', ending: '.R', command: works('Rscript', '--version') ? 'Rscript' : null },
  {
    name: 'Python',
    ending: '.py',
    command: pythons.find((python) => works(python, '-c', 'import numpy, scipy')) ?? null,
  },
] as const;
export type Language = (typeof LANGUAGES)[number];

/** Files to take home by their endings. */
export function packByEnding(arms: readonly Arm[], settings: Settings): ReadonlyMap<string, string> {
  return new Map(
    packTakeHome(arms, settings, steps).map(({ name, text }) => [/(?:-rows)?\.\w+$/u.exec(name)?.[0] ?? name, text]),
  );
}

/** Runs a command where the system knows English letters alone; what it printed, and its complaint where it failed. */
export function run(command: string, ...parameters: readonly string[]) {
  const env = { ...process.env, LANG: 'C', LC_ALL: 'C' };
  const { status, stdout, stderr } = spawnSync(command, parameters, { encoding: 'utf8', maxBuffer: 2 ** 28, env });
  return { status, stdout, stderr };
}

const END = 'END OF SCRIPT';

/** What each script prints, one after another in one file, read as its language reads any file. */
export function runTogether({ ending, command }: Language, scripts: readonly string[], folder: string): string[] {
  if (command === null) throw new Error('expected an installed language');
  const close = ending === '.R' ? `\ncat("${END}\\n")\n` : `\nprint("${END}")\n`;
  const file = join(folder, `together${ending}`);
  writeFileSync(file, scripts.map((script) => script + close).join('\n'));
  const { status, stdout, stderr } = run(command, file);
  const printed = stdout.split(`${END}\n`);
  if (status !== 0) throw new Error(`script ${printed.length} of ${scripts.length} in ${ending} failed: ${stderr}`);
  return printed.slice(0, -1);
}

/** The numbers that a script printed: here and the site's, by band and quantity. */
export function readPrinted(printed: string): readonly { what: string; here: number; site: number }[] {
  // R writes a letter that the language of the system has not by its number.
  const letters = printed.replace(/<U\+([\dA-F]{4})>/gu, (_, code) => String.fromCodePoint(Number.parseInt(code, 16)));
  return [...letters.matchAll(/^(.+?) +here (\S+) +site (\S+)$/gmu)].map(([, what, here, site]) => ({
    what: what.replace(/ +/gu, ' '),
    here: Number(here),
    site: Number(site),
  }));
}
