/** What an entry of the catalogue of figures is made from, and what it makes. */
import type { Sweep } from '../model/checks/sweep.ts';
import type { EvidenceMap } from '../model/evidenceMap.ts';
import type { FullAnalysis } from '../model/full.ts';
import type { ExcludedRow } from '../model/result.ts';
import type { Figure } from './figure.ts';

export interface FigureEvidence {
  readonly analysis: FullAnalysis;
  readonly map: EvidenceMap;
  /** null where it has not been worked out. */
  readonly sweep: Sweep | null;
}

export interface CataloguedFigure {
  /** Part of the address; stays the same whatever the numbers are. */
  readonly slug: string;
  /** What the figure is of, whatever it finds. */
  readonly name: string;
  readonly figure: Figure;
  /** Which rows it shows. */
  readonly shown: string;
  /** Rows of the table that it could show and does not, with why; null where the caption says so. */
  readonly excluded: readonly ExcludedRow[] | null;
  /** What of the analysis it is drawn from: plain JSON, with every number of its words. */
  readonly part: object;
}

/** A figure with what is said beside it, before it has its name. */
export type MadeFigure = Omit<CataloguedFigure, 'slug' | 'name'>;

/** What of the evidence a figure cannot do without, besides the analysis itself. */
export type FigureNeed = 'checks' | 'sweep';

/** One figure of the catalogue, whether or not an analysis makes it. */
export interface CatalogueEntry {
  readonly slug: string;
  readonly name: string;
  readonly needs?: FigureNeed;
  /** The figure, or why there is none. */
  readonly make: (evidence: FigureEvidence) => MadeFigure | string;
}
