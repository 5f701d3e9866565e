/**
 * The worker that computes: reads a table once, then answers requests. Quick answers come as they are
 * asked; the sweep runs in steps, so that it can report progress and be stopped.
 */
import { formatProblem } from '../../evidence/problem.ts';
import type { Arm } from '../../evidence/schema.ts';
import { readArmsToAnalyse } from '../../evidence/table.ts';
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
import { loadTableText } from '../../ownTable/loadTable.ts';
import { answerCalls } from '../../ui/workerAnswers.ts';
import type { Operation } from '../../ui/workerCalls.ts';
import { type FigureSource, gatherFigures } from './figureSource.ts';
import { listVocabulary, type Vocabulary } from './filterOptions.ts';
import { type StudiesView, viewStudies } from './studiesView.ts';
import { type SharedTarget, targetsByShare } from './targetsByShare.ts';

/** What every analysis is asked with. */
export interface Asked {
  /** Address of the table on this site, or of the reader's own (loadTable.ts). */
  readonly table: string;
  readonly settings: Settings;
}

export type AnalysisOperations = {
  readonly analyse: Operation<Asked, Analysis>;
  readonly practice: Operation<Asked, PracticeAnalysis>;
  readonly shares: Operation<Asked, readonly SharedTarget[]>;
  readonly vocabulary: Operation<Asked, Vocabulary>;
  /** At once what needs no refit; with each study's influence when it is known. */
  readonly studies: Operation<Asked, StudiesView, StudiesView>;
  readonly check: Operation<Asked, BandsChecks>;
  readonly sweep: Operation<Asked, Sweep, SweepProgress>;
  readonly 'take home': Operation<Asked, readonly TakeHomeFile[]>;
  /** At once what needs no check; all of it when the checks are made. */
  readonly figures: Operation<Asked, FigureSource, FigureSource>;
};

answerCalls<AnalysisOperations>({
  analyse: async ({ table, settings }) => analyse(await loadArms(table), settings),
  practice: async ({ table, settings }) => practise(await loadArms(table), settings),
  shares: async ({ table, settings }) => targetsByShare(await loadArms(table), settings),
  vocabulary: async ({ table }) => listVocabulary(await loadArms(table)),
  studies: async ({ table, settings }, { report }) => {
    const arms = await loadArms(table);
    report(viewStudies(arms, settings, {}));
    return viewStudies(arms, settings, checkBands(arms, settings));
  },
  check: async ({ table, settings }) => checkBands(await loadArms(table), settings),
  sweep: async ({ table, settings }, { report, signal }) => {
    const steps = sweepChoices(await loadArms(table), settings);
    let step = steps.next();
    while (!step.done) {
      report(step.value);
      // Lets other requests, and the wish to stop, come in between.
      await new Promise((resolve) => setTimeout(resolve));
      signal.throwIfAborted();
      step = steps.next();
    }
    return step.value;
  },
  'take home': async ({ table, settings }) => packTakeHome(await loadArms(table), settings),
  figures: async ({ table, settings }, { report }) => {
    const steps = gatherFigures(await loadArms(table), table, settings);
    let step = steps.next();
    while (!step.done) {
      report(step.value);
      step = steps.next();
    }
    return step.value;
  },
});

/** What stands beside the curve, of the last rows and settings; moving the kept share leaves it as it is. */
let beside: { readonly arms: readonly Arm[]; readonly key: string; readonly found: Beside } | null = null;

function practise(arms: readonly Arm[], settings: Settings): PracticeAnalysis {
  const key = JSON.stringify({ ...settings, keptShare: null });
  if (beside?.arms !== arms || beside.key !== key) beside = { arms, key, found: analyseBeside(arms, settings) };
  return analyseForPractice(arms, settings, beside.found);
}

const tables = new Map<string, Promise<readonly Arm[]>>();

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
  const { arms, problems } = readArmsToAnalyse(await loadTableText(address), address);
  if (problems.length > 0) throw new Error(problems.map(formatProblem).join('\n'));
  return arms;
}
