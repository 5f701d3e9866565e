/** The worker that holds each lifter's own loads against the evidence, however many there are. */
import type { PracticeAnalysis } from '../../../model/full.ts';
import { judgeLifters, type LifterLines, type LiftersInput } from '../../../practice/lifters/judge.ts';
import type { LineList } from '../../../practice/programme/edit.ts';
import { answerCalls } from '../../../ui/workerAnswers.ts';
import type { Operation } from '../../../ui/workerCalls.ts';

export interface JudgeAsked {
  /** Given with the first request of a worker, and again where it changed: it is most of what there is to send. */
  readonly analysis: PracticeAnalysis | null;
  readonly input: Omit<LiftersInput, 'list'>;
  readonly first: LineList;
  readonly second: LineList | null;
}

export interface JudgedVersions {
  readonly first: readonly LifterLines[];
  readonly second: readonly LifterLines[] | null;
}

export type LiftersOperations = { readonly judge: Operation<JudgeAsked, JudgedVersions> };

let analysis: PracticeAnalysis | null = null;

answerCalls<LiftersOperations>({
  judge: ({ analysis: given, input, first, second }) => {
    const by = given ?? analysis;
    if (!by) throw new Error('no analysis was given');
    analysis = by;
    const judge = (list: LineList) => judgeLifters(by, { ...input, list });
    return { first: judge(first), second: second && judge(second) };
  },
});
