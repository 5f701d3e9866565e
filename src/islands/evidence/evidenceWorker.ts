/** The worker of the Evidence page: quick answers as they are asked, the sweep in steps. */
import stepsOfPython from '../../figures/takeHome/steps.py?url';
import stepsOfR from '../../figures/takeHome/steps.R?url';
import { packTakeHome, type TakeHomeFile } from '../../figures/takeHome/takeHome.ts';
import { analyse } from '../../model/analyse.ts';
import { type BandsChecks, checkBands } from '../../model/full.ts';
import type { Analysis } from '../../model/result.ts';
import { answerCalls } from '../../ui/workerAnswers.ts';
import type { Operation } from '../../ui/workerCalls.ts';
import { answerSweep, type SweepOperation } from '../analysis/answerSweep.ts';
import { listVocabulary, type Vocabulary } from '../analysis/filterOptions.ts';
import { type Asked, loadArms } from '../analysis/loadArms.ts';

export type EvidenceOperations = {
  readonly analyse: Operation<Asked, Analysis>;
  readonly vocabulary: Operation<Asked, Vocabulary>;
  readonly check: Operation<Asked, BandsChecks>;
  readonly sweep: SweepOperation;
  readonly 'take home': Operation<Asked, readonly TakeHomeFile[]>;
};

answerCalls<EvidenceOperations>({
  analyse: async ({ table, settings }) => analyse(await loadArms(table), settings),
  vocabulary: async ({ table }) => listVocabulary(await loadArms(table)),
  check: async ({ table, settings }) => checkBands(await loadArms(table), settings),
  sweep: answerSweep,
  'take home': async ({ table, settings }) => {
    const [arms, r, python] = await Promise.all([loadArms(table), loadText(stepsOfR), loadText(stepsOfPython)]);
    return packTakeHome(arms, settings, { r, python });
  },
});

/** Files of the site that only this answer needs, so that no visit carries them. */
async function loadText(address: string): Promise<string> {
  const response = await fetch(address);
  if (!response.ok)
    throw new Error(`the script’s steps could not be loaded: ${response.status} ${response.statusText}`);
  return response.text();
}
