/** The worker that checks programmes and reads written ones, however long they are, without holding up the page. */
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import { type ProgrammeInput, type ProgrammeReport, reportProgramme } from '../../practice/programme/report.ts';
import { readWritten } from '../../practice/programme/written/readWritten.ts';
import type { WrittenProgramme } from '../../practice/programme/written/understood.ts';
import { answerCalls } from '../../ui/workerAnswers.ts';
import type { Operation } from '../../ui/workerCalls.ts';

interface Asked {
  /** Given with the first request of a worker, and again where it changed: it is most of what there is to send. */
  readonly analysis: PracticeAnalysis | null;
  readonly input: ProgrammeInput;
}

interface Written {
  readonly text: string;
  readonly exercises: readonly NamedExercise[];
}

export type ProgrammeOperations = {
  readonly check: Operation<Asked, ProgrammeReport>;
  readonly understand: Operation<Written, WrittenProgramme>;
};

let analysis: PracticeAnalysis | null = null;

answerCalls<ProgrammeOperations>({
  check: ({ analysis: given, input }) => {
    analysis = given ?? analysis;
    if (!analysis) throw new Error('no analysis was given');
    return reportProgramme(analysis, input);
  },
  understand: ({ text, exercises }) => readWritten(text, exercises),
});
