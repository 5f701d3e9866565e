/** The shape of what a planned study is expected to do: plain JSON, for pages, files and the command line. */
import type { BandName, Target } from '../result.ts';
import type { ExpectedKept, ExpectedTarget, WholeShare } from './expectedTarget.ts';
import type { PlanAssumptions } from './plannedRows.ts';

export interface PlanExpectation {
  /** What is wrong with the plan, a sentence each; where there is any, there are no bands. */
  readonly problems: readonly string[];
  readonly assumptions: PlanAssumptions | null;
  /** People that the study must find. */
  readonly people: number;
  readonly bands: readonly BandExpectation[];
}

export interface BandExpectation {
  readonly band: BandName;
  /** Arms of the plan in this band; where there are none, `after` is today. */
  readonly arms: number;
  /** Sampling variance of each of these arms, on the scale of the analysis, by reserve. */
  readonly variances: readonly { readonly reserve: number; readonly load: number | null; readonly variance: number }[];
  /** Variances between studies and between rows that the study is drawn with; null without a fit. */
  readonly tau2: number | null;
  readonly omega2: number | null;
  /** The target today, as the site shows it. */
  readonly today: Target;
  /** Today in the words of `after`: its width, or why there is none. */
  readonly before: ExpectedTarget;
  /** null where nothing can be said; `reason` says why. */
  readonly after: ExpectedTarget | null;
  /** How much narrower, repetitions; below 0 where wider; null where either width is missing. */
  readonly narrowing: number | null;
  /** The same for each person of the whole study. */
  readonly narrowingPerPerson: number | null;
  /** Growth kept at 1, 2 and 3 in reserve, as far as they are studied. */
  readonly kept: readonly { readonly before: ExpectedKept; readonly after: ExpectedKept }[];
  /** Chance that the whole repetitions to tell come out otherwise than today, 0 to 1; null with `after`. */
  readonly chanceOfMove: number | null;
  readonly wholes: readonly WholeShare[];
  /**
   * Standard error, under the working model, of what decides the target: growth at its estimate less the share of that
   * at 0, on the scale of the analysis. It never rises with people, whatever the table's errors happen to be; null
   * without a target today, or under weights that are no model.
   */
  readonly modelError: { readonly before: number; readonly after: number } | null;
  /** What stands in the way, or how the plan may turn a refusal into an answer; null where there is nothing to say. */
  readonly reason: string | null;
}
