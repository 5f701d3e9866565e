/** The worker that checks programmes, however long they are, without holding up the page. */
import type { PracticeAnalysis } from '../../model/full.ts';
import { type ProgrammeInput, type ProgrammeReport, reportProgramme } from '../../practice/programme/report.ts';
import { reasonOf } from '../../ui/reasonOf.ts';

export interface ProgrammeRequest {
  readonly id: number;
  /** Given with the first request, and again where it changed. */
  readonly analysis: PracticeAnalysis | null;
  readonly input: ProgrammeInput;
}

export type ProgrammeReply =
  | { readonly id: number; readonly report: ProgrammeReport; readonly problem: null }
  | { readonly id: number; readonly report: null; readonly problem: string };

let analysis: PracticeAnalysis | null = null;

self.addEventListener('message', ({ data }: MessageEvent<ProgrammeRequest>) => {
  analysis = data.analysis ?? analysis;
  self.postMessage(answer(data));
});

function answer({ id, input }: ProgrammeRequest): ProgrammeReply {
  if (!analysis) return { id, report: null, problem: 'no analysis was given' };
  try {
    return { id, report: reportProgramme(analysis, input), problem: null };
  } catch (error) {
    return { id, report: null, problem: reasonOf(error) };
  }
}
