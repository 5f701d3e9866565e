/**
 * The worker that computes: reads the site's table once, then answers requests. Quick answers come as
 * they are asked; the sweep runs in steps, so that it can report progress and be stopped.
 */
import { formatProblem } from '../../evidence/problem.ts';
import type { Arm } from '../../evidence/schema.ts';
import { readArms } from '../../evidence/table.ts';
import { packTakeHome, type TakeHomeFile } from '../../figures/takeHome/takeHome.ts';
import { analyse } from '../../model/analyse.ts';
import { type Sweep, type SweepProgress, sweepChoices } from '../../model/checks/sweep.ts';
import {
  analyseBeside,
  analyseForPractice,
  type BandsChecks,
  type Beside,
  checkBands,
  type PracticeAnalysis,
} from '../../model/full.ts';
import type { Analysis } from '../../model/result.ts';
import type { Settings } from '../../model/settings.ts';
import { loadTableText } from '../../ownTable/tableText.ts';
import { reasonOf } from '../../ui/reasonOf.ts';
import { type FigureSource, gatherFigures } from './figureSource.ts';
import { listVocabulary, type Vocabulary } from './filterOptions.ts';
import { type StudiesView, viewStudies } from './studiesView.ts';

export type WorkerRequest =
  | {
      readonly kind: 'analyse' | 'practice' | 'vocabulary' | 'studies' | 'check' | 'sweep' | 'take home' | 'figures';
      readonly id: number;
      /** Address of the table on this site, or of the reader's own (ownTable.ts). */
      readonly table: string;
      readonly settings: Settings;
    }
  | { readonly kind: 'stop sweep' };

export type WorkerReply =
  | { readonly kind: 'analysis'; readonly id: number; readonly analysis: Analysis }
  | { readonly kind: 'practice'; readonly id: number; readonly analysis: PracticeAnalysis }
  | { readonly kind: 'vocabulary'; readonly id: number; readonly vocabulary: Vocabulary }
  | { readonly kind: 'studies'; readonly id: number; readonly studies: StudiesView }
  | { readonly kind: 'checks'; readonly id: number; readonly checks: BandsChecks }
  | { readonly kind: 'sweep progress'; readonly id: number; readonly progress: SweepProgress }
  | { readonly kind: 'sweep'; readonly id: number; readonly sweep: Sweep }
  | ({ readonly kind: 'figures'; readonly id: number } & FigureSource)
  | { readonly kind: 'files'; readonly id: number; readonly files: readonly TakeHomeFile[] }
  | { readonly kind: 'problem'; readonly id: number; readonly problem: string };

const tables = new Map<string, Promise<readonly Arm[]>>();
/** Request whose sweep is wanted; another number stops the one that runs. */
let sweeping: number | null = null;

self.addEventListener('message', ({ data }: MessageEvent<WorkerRequest>) => {
  if (data.kind === 'stop sweep') sweeping = null;
  else void answer(data);
});

async function answer(request: Exclude<WorkerRequest, { kind: 'stop sweep' }>): Promise<void> {
  const { kind, id, table, settings } = request;
  try {
    const arms = await loadArms(table);
    if (kind === 'analyse') reply({ kind: 'analysis', id, analysis: analyse(arms, settings) });
    else if (kind === 'practice') reply({ kind: 'practice', id, analysis: practise(arms, settings) });
    else if (kind === 'vocabulary') reply({ kind, id, vocabulary: listVocabulary(arms) });
    else if (kind === 'studies') {
      // At once what needs no refit; with each study's influence when it is known.
      reply({ kind, id, studies: viewStudies(arms, settings, {}) });
      reply({ kind, id, studies: viewStudies(arms, settings, checkBands(arms, settings)) });
    } else if (kind === 'check') reply({ kind: 'checks', id, checks: checkBands(arms, settings) });
    else if (kind === 'take home') reply({ kind: 'files', id, files: packTakeHome(arms, settings) });
    else if (kind === 'figures') {
      for await (const source of gatherFigures(arms, table, settings)) reply({ kind, id, ...source });
    } else await sweep(arms, settings, id);
  } catch (error) {
    reply({ kind: 'problem', id, problem: reasonOf(error) });
  }
}

/** What stands beside the curve, of the last rows and settings; moving the kept share leaves it as it is. */
let beside: { readonly arms: readonly Arm[]; readonly key: string; readonly found: Beside } | null = null;

function practise(arms: readonly Arm[], settings: Settings): PracticeAnalysis {
  const key = JSON.stringify({ ...settings, keptShare: null });
  if (beside?.arms !== arms || beside.key !== key) beside = { arms, key, found: analyseBeside(arms, settings) };
  return analyseForPractice(arms, settings, beside.found);
}

async function sweep(arms: readonly Arm[], settings: Settings, id: number): Promise<void> {
  sweeping = id;
  const steps = sweepChoices(arms, settings);
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) {
      reply({ kind: 'sweep', id, sweep: step.value });
      return;
    }
    reply({ kind: 'sweep progress', id, progress: step.value });
    // Lets other requests, and the wish to stop, come in between.
    await new Promise((resolve) => setTimeout(resolve));
    if (sweeping !== id) return;
  }
}

async function loadArms(address: string): Promise<readonly Arm[]> {
  const known = tables.get(address) ?? readTable(address);
  tables.set(address, known);
  try {
    return await known;
  } catch (error) {
    // A table that failed to load is asked for again next time.
    tables.delete(address);
    throw error;
  }
}

async function readTable(address: string): Promise<readonly Arm[]> {
  const { arms, problems } = readArms(await loadTableText(address), address);
  if (problems.length > 0) throw new Error(problems.map(formatProblem).join('\n'));
  return arms;
}

function reply(message: WorkerReply): void {
  self.postMessage(message);
}
