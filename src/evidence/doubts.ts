/** All that is doubted in a table of study arms, beyond what refuses it. Apart, since who only analyses a table need not ask. */
import { checkCorrelation, checkImpliedCorrelation } from './correlationChecks.ts';
import { checkCentre, checkWidth } from './intervalChecks.ts';
import type { Problem } from './problem.ts';
import type { Arm } from './schema.ts';
import type { SelfCheck } from './selfCheck.ts';
import { REFUSING_CHECKS } from './selfContradiction.ts';
import { checkPercentOfMeans, checkSignOfEffect, checkSignOfPercent } from './spreadChecks.ts';
import { checkFAgainstT, checkPAgainstError, checkSignOfT, checkTAgainstError, checkTAgainstP } from './testChecks.ts';
import { findUnusual } from './unusual.ts';

/** What is looked for in a row, and in the rows together. */
export interface Doubts {
  readonly ofRow: readonly SelfCheck[];
  readonly ofTable: (rows: readonly Arm[], file: string) => readonly Problem[];
}

/** In this order, since the later checks rest on what the earlier ones found to agree. */
export const ALL_DOUBTS: Doubts = {
  ofRow: [
    ...REFUSING_CHECKS,
    checkCentre,
    checkSignOfT,
    checkSignOfPercent,
    checkSignOfEffect,
    checkPercentOfMeans,
    checkFAgainstT,
    checkTAgainstP,
    checkTAgainstError,
    checkPAgainstError,
    checkWidth,
    checkImpliedCorrelation,
    checkCorrelation,
  ],
  ofTable: findUnusual,
};
