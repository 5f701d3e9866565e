/** Runs several of package.json's scripts at the same time; `npx node scripts/together.ts --help` says how. */
import { spawn } from 'node:child_process';
import { runScript } from './terminal/call.ts';

const HELP = `usage: npx node scripts/together.ts 'types,lint' 'build,budget'

Runs rows of package.json's scripts at the same time, the scripts of a row one after another; a step that keeps one
core at work leaves the other to the next row. What a script says is printed whole when it ends. After a failure no
further script is begun.

Exit code 0: all ended well. 1: one failed.`;

/** Runs a script to its end and prints what it said; true where it ended well. */
function runToEnd(name: string): Promise<boolean> {
  const child = spawn(`npm run ${name}`, { shell: true, stdio: ['ignore', 'pipe', 'pipe'] });
  const said: Buffer[] = [];
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (piece: Buffer) => said.push(piece));
  return new Promise((resolve) => {
    child.on('error', (error) => said.push(Buffer.from(error.message)));
    child.on('close', (code) => {
      process.stdout.write(Buffer.concat(said));
      if (code !== 0) console.error(`npm run ${name} failed (${code})`);
      resolve(code === 0);
    });
  });
}

async function runTogether({ files: rows }: { readonly files: readonly string[] }): Promise<void> {
  let isWell = true;
  const runRow = async (row: string) => {
    for (const name of row.split(',')) if (isWell && !(await runToEnd(name))) isWell = false;
  };
  await Promise.all(rows.map(runRow));
  if (!isWell) process.exitCode = 1;
}

if (import.meta.main)
  runScript({ help: HELP, files: { counts: [1, 2, 3, 4], expected: 'one to four rows of scripts' } }, runTogether);
