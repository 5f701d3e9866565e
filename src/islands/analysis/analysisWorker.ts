/**
 * The worker of the pages that show a whole analysis: reads a table once, then answers requests. Evidence, which
 * asks for single fits, has one of its own (evidence/evidenceWorker.ts), so that neither carries what the other needs.
 */
import type { Arm } from '../../evidence/schema.ts';
import {
  analyseForPractice,
  analyseStrengthAndFatigue,
  checkBands,
  type PracticeAnalysis,
  type StrengthAndFatigue,
} from '../../model/full.ts';
import type { Settings } from '../../model/settings.ts';
import { answerCalls } from '../../ui/workerAnswers.ts';
import type { Operation } from '../../ui/workerCalls.ts';
import { answerSweep, type SweepOperation } from './answerSweep.ts';
import { type FigureSource, gatherFigures } from './figureSource.ts';
import { type Asked, loadArms } from './loadArms.ts';
import { type StudiesView, viewStudies } from './studiesView.ts';
import { type SharedTarget, targetsByShare } from './targetsByShare.ts';

export type AnalysisOperations = {
  readonly practice: Operation<Asked, PracticeAnalysis>;
  readonly shares: Operation<Asked, readonly SharedTarget[]>;
  /** At once what needs no refit; with each study's influence when it is known. */
  readonly studies: Operation<Asked, StudiesView, StudiesView>;
  readonly sweep: SweepOperation;
  /** At once what needs no check; all of it when the checks are made. */
  readonly figures: Operation<Asked, FigureSource, FigureSource>;
};

answerCalls<AnalysisOperations>({
  practice: async ({ table, settings }) => practise(await loadArms(table), settings),
  shares: async ({ table, settings }) => targetsByShare(await loadArms(table), settings),
  studies: async ({ table, settings }, { report }) => {
    const arms = await loadArms(table);
    report(viewStudies(arms, settings, {}));
    return viewStudies(arms, settings, checkBands(arms, settings));
  },
  sweep: answerSweep,
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
let beside: { readonly arms: readonly Arm[]; readonly key: string; readonly found: StrengthAndFatigue } | null = null;

function practise(arms: readonly Arm[], settings: Settings): PracticeAnalysis {
  const key = JSON.stringify({ ...settings, keptShare: null });
  if (beside?.arms !== arms || beside.key !== key)
    beside = { arms, key, found: analyseStrengthAndFatigue(arms, settings) };
  return analyseForPractice(arms, settings, beside.found);
}
