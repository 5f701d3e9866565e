/** Scripts as a person runs them, and a folder of files to give them that is gone when a test file ends. */
import { type SpawnSyncReturns, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

/** Runs `scripts/<script>.ts` with its parameters on this Node; output as text. */
export function run(script: string, ...parameters: string[]): SpawnSyncReturns<string> {
  return spawnSync(process.execPath, [`scripts/${script}.ts`, ...parameters], { encoding: 'utf8' });
}

export interface FileFolder {
  /** Absolute path. */
  readonly folder: string;
  /** Writes a file there; its absolute path. */
  readonly file: (name: string, content: string | Uint8Array) => string;
}

/** A new folder, removed after the tests of the file that calls this. */
export function useFolder(name: string): FileFolder {
  const folder = mkdtempSync(join(tmpdir(), `${name}-`));
  afterAll(() => rmSync(folder, { recursive: true }));
  return {
    folder,
    file: (fileName, content) => {
      const path = join(folder, fileName);
      writeFileSync(path, content);
      return path;
    },
  };
}
