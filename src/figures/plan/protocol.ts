/** A plan as a text for a protocol: what is planned, what was assumed, what is expected and what is not claimed. */
import { OUTCOMES } from '../../model/plan/bandOutcomes.ts';
import type { PlanAnswer } from '../../model/plan/planAnswer.ts';
import type { BandExpectation } from '../../model/plan/planExpectation.ts';
import type { PlanningFacts } from '../../model/plan/planningFacts.ts';
import { countOf, countStudies } from '../../numerics/countOf.ts';
import { writePercent } from '../../numerics/percent.ts';
import { LOAD_HEADINGS } from '../../practice/loadNames.ts';
import { formatPlain, formatSignificant, formatWhole } from '../format.ts';
import { OUTCOME_WORDS } from '../outcomeWords.ts';
import type { TakeHomeFile } from '../takeHome/takeHome.ts';
import { listAdjusted } from './assumedWords.ts';
import { stateLimit } from './limitWords.ts';
import { type FileContext, INVENTED, listSettings, type NamedAnswer, nameFile } from './planFiles.ts';
import {
  assumedOfMeasure,
  DESIGN_WORDS,
  formatChance,
  formatExpected,
  listWholes,
  stateArm,
  stateNarrowing,
  stateWidth,
} from './planWords.ts';

const DIGITS = 3;

export function writeProtocols(
  facts: PlanningFacts,
  answers: readonly NamedAnswer[],
  context: FileContext,
): TakeHomeFile {
  const texts = answers.map(({ name, answer }) => {
    const heading = answers.length > 1 ? `PLAN ${name}\n\n` : '';
    return `${heading}${writeProtocol(facts, answer, context)}\n`;
  });
  return { name: nameFile(context, '.txt'), type: 'text/plain', text: texts.join('\n\n') };
}

/** Paragraphs, an empty line between them. */
export function writeProtocol(facts: PlanningFacts, answer: PlanAnswer, context: FileContext): string {
  const { plan, expectation } = answer;
  const { assumptions, problems, people, bands } = expectation;
  const { settings } = facts;
  const invented = context.isDemonstration ? [`DEMONSTRATION: ${INVENTED}. Do not plan by them.`] : [];
  if (!assumptions) return [...invented, `This plan cannot be worked out: ${problems.join('; ')}.`].join('\n\n');
  const weeks = assumptions.weeks === null ? 'weeks not said' : `${formatPlain(assumptions.weeks)} weeks`;
  const adjusted = listAdjusted(assumptions, plan, settings);
  const touched = bands.filter(({ arms }) => arms > 0);
  return [
    ...invented,
    `Planned: a ${plan.design} study (${DESIGN_WORDS[plan.design]}), ${weeks}. Arms: ${plan.arms.map(stateArm).join('; ')}. In all ${countOf(people, 'person', 'people')} measured before and after.`,
    `Assumed: ${assumedOfMeasure(assumptions)}. ${adjusted.length > 0 ? `The analysis is adjusted, and the planned arms are taken to have: ${adjusted.join('; ')}. ` : ''}The study's arms are drawn from the curve that is fitted to the table, off by the robust error (CR2) of its coefficients, by the spread between studies and between rows as they are fitted (${touched.map(stateSpreads).join('; ') || 'none'}), and by the people's own. ${plan.design === 'within-person' ? `Errors of arms on the same people correlate by ${settings.rho}. ` : ''}These spreads are held as they are when the interval is worked out. Nobody drops out.`,
    `From: the table of study arms ${context.table}, version ${context.dataVersion}, ${countOf(facts.rows, 'row')} of ${countStudies(facts.studies)}. Analysis: ${listSettings(facts)}.`,
    ...touched.map((band) => stateExpected(band, answer, facts)),
    'Not claimed: that the interval will come out so; that the curve, the spread between studies or the usual numbers hold for these people, this measure and this training; power of a test; anything on ethics or safety. Registered protocols and local review boards come first.',
    ...(context.address ? [`Worked out at ${context.address}`] : []),
  ].join('\n\n');
}

function stateSpreads({ band, tau2, omega2 }: BandExpectation): string {
  const name = LOAD_HEADINGS[band].toLowerCase();
  if (tau2 === null || omega2 === null) return `${name}: not fitted`;
  return `${name}: τ² ${formatSignificant(tau2, DIGITS)}, ω² ${formatSignificant(omega2, DIGITS)}`;
}

function stateExpected(
  { band, before, after, today, chanceOfMove, wholes, narrowing, reason }: BandExpectation,
  { limits }: PlanAnswer,
  { settings: { keptShare, outcome, confidence, weighting } }: PlanningFacts,
): string {
  const limit = limits.find((one) => one.band === band)?.target;
  const now = `${LOAD_HEADINGS[band]}: the largest reserve that keeps ${writePercent(keptShare)} of the ${OUTCOME_WORDS[outcome].effect} at reserve 0, with its ${writePercent(confidence)} interval, is ${formatExpected(before)} today${before.point === null ? '' : `, ${stateWidth(before)}`}.`;
  if (!after) return `${now} What comes cannot be foreseen: ${reason ?? 'no reason is known'}.`;
  return [
    now,
    `Expected with the study: ${formatExpected(after)}${after.point === null ? '' : `, ${stateWidth(after)}`} (medians of ${OUTCOMES} outcomes that stand for all); ${stateNarrowing(narrowing, before, after)}.`,
    chanceOfMove === null
      ? ''
      : `Whole repetitions told: ${formatWhole(today.whole)} today, another number in ${formatChance(chanceOfMove)} outcomes (${listWholes(wholes)}).`,
    limit ? stateLimit(limit, { before, after }, { weighting }) : '',
    reason ? `Note: ${reason}.` : '',
  ]
    .filter(Boolean)
    .join(' ');
}
