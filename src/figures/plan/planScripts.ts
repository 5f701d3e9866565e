/**
 * Scripts for R and Python that work out again what plans are expected to do: today's fit from the rows, the new
 * study's 128 outcomes, the interval of each, and the medians, beside the site's numbers. The steps up to the target are
 * those of every script that is taken home (`../takeHome/steps.R`, `steps.py`); what follows is `plan.R` and `plan.py`.
 */
import { addStudy } from '../../model/plan/addedStudy.ts';
import { OUTCOMES } from '../../model/plan/bandOutcomes.ts';
import type { BandExpectation } from '../../model/plan/planExpectation.ts';
import { assume, makePlannedRows } from '../../model/plan/plannedRows.ts';
import { bandNamed, type Planning } from '../../model/plan/planningBase.ts';
import { type ScriptData, writeForPython, writeForR } from '../takeHome/dialects.ts';
import { writeComment } from '../takeHome/literals.ts';
import { gatherScriptData } from '../takeHome/scriptData.ts';
import { PRINTS_ALL, type Steps, type TakeHomeFile } from '../takeHome/takeHome.ts';
import { type FileContext, type NamedAnswer, nameFile, stateAssumed } from './planFiles.ts';

/** A plan's rows in one band, beside those of the table. */
interface ScriptPlan {
  readonly label: string;
  readonly band: string;
  readonly curve: string;
  readonly knots: readonly number[];
  readonly covariates: number;
  /** Rows of the plan; they come last. */
  readonly added: number;
  /** Covariates of these rows as today's fit centres them, a row after the other. */
  readonly today: readonly number[];
  readonly rows: readonly (readonly number[])[];
}

/** Where the shared steps end: what follows there compares a fit with the site's. */
const END_OF_R = '# 8. These numbers';
const END_OF_PYTHON = '# %% [markdown]\n# ## 8. These numbers';

/**
 * @param steps texts of the shared steps
 * @param own texts of `plan.R` and `plan.py`
 */
export function writePlanScripts(
  planning: Planning,
  answers: readonly NamedAnswer[],
  context: FileContext,
  steps: Steps,
  own: Steps,
): readonly TakeHomeFile[] {
  const { settings, bands } = planning;
  const fitted = bands.map(({ name, fit, target }) => ({ name, source: fit, target }));
  const today = gatherScriptData(fitted, settings);
  const told = answers.flatMap(({ name, answer }) =>
    answer.expectation.bands
      .filter(({ arms, after }) => arms > 0 && after !== null)
      .map((band) => ({ label: `${name} ${band.band}`, answer, band })),
  );
  const plans = told.map(({ label, answer, band }) => gatherPlan(planning, today, label, answer.plan, band.band));
  const data: ScriptData = {
    ...today,
    studies: [...today.studies, 'the planned study'],
    site: told.flatMap(({ label, band }) => listNumbers(label, band)),
  };
  const comment = [
    'Shy of Failure: what planned studies are expected to do, worked out again from the rows',
    ...(context.isDemonstration ? ['DEMONSTRATION: the studies behind these rows are invented.'] : []),
    `Each study is drawn in ${OUTCOMES} outcomes that stand for all; each outcome's interval is made as the site makes its own, with the spread between studies and rows held as fitted today. Told are the medians.`,
    ...stateAssumed(answers, context, settings),
  ]
    .map(writeComment)
    .join('\n');
  return [
    {
      name: nameFile(context, '.R'),
      type: 'text/plain',
      text: `${comment}\n# Run: Rscript this-file.R   (needs base R alone)\n\n${writeForR(data)}\nOUTCOMES <- ${OUTCOMES}\nPLANS <- list()\n${plans.map(writePlanForR).join('\n')}\n\n${cutAt(steps.r, END_OF_R)}${own.r}`,
    },
    {
      name: nameFile(context, '.py'),
      type: 'text/x-python',
      text: `${comment}\n# Run: python3 this-file.py   (needs numpy and scipy)\n${PRINTS_ALL}\n${writeForPython(data)}\nOUTCOMES = ${OUTCOMES}\nPLANS = {}\n${plans.map(writePlanForPython).join('\n')}\n\n${cutAt(steps.python, END_OF_PYTHON)}${own.python}`,
    },
  ];
}

function gatherPlan(
  planning: Planning,
  today: ScriptData,
  label: string,
  plan: NamedAnswer['answer']['plan'],
  name: BandExpectation['band'],
): ScriptPlan {
  const band = bandNamed(planning, name);
  const assumptions = assume(planning, plan);
  const planned = typeof assumptions === 'string' ? assumptions : makePlannedRows(planning, band, plan, assumptions);
  const known = today.bands.find((one) => one.name === name);
  if (typeof planned === 'string' || !known) throw new Error(`invalid call: no rows of plan ${label}`);
  const { band: after, place } = addStudy(band, planned, planning.settings);
  const { data, basis } = after;
  const count = band.fit.effects.length;
  // Those of the plan in the order in which their outcomes are drawn.
  const order = [
    ...Array.from({ length: count }, (_, i) => i),
    ...planned.map((_, i) => data.source[data.studyStart[place] + i]),
  ];
  const covariates = after.columns.slice(basis.terms.length);
  const cohorts = [...new Set(planned.map(({ effect }) => effect.arm.cohort))];
  const rows = order.map((i) => {
    const shared = covariates.map((column) => column[i]);
    if (i < count) return [...known.rows[i].slice(0, today.columns.length), ...shared];
    const { arm, v } = planned[i - count].effect;
    return [0, today.studies.length + 1, cohorts.indexOf(arm.cohort) + 1, 0, v, after.reserves[i], ...shared];
  });
  const terms = band.fit.basis.terms.length;
  return {
    label,
    band: name,
    curve: basis.curve,
    knots: basis.knots ?? [],
    covariates: covariates.length,
    added: planned.length,
    today: order.slice(count).flatMap((i) => planned[i - count].x.slice(terms)),
    rows,
  };
}

/** The site's numbers of a plan, in the order in which the steps find them. */
function listNumbers(label: string, { after, modelError }: BandExpectation): ScriptData['site'] {
  const numbers: readonly (readonly [string, number | null])[] = [
    ['outcomes without a target', after?.refused ?? null],
    ['outcomes without an upper end', after?.unbounded ?? null],
    ['expected estimate', after?.point ?? null],
    ['expected, least', after?.low ?? null],
    ['expected, most', after?.high ?? null],
    ['expected width', after?.width ?? null],
    ['model error today', modelError?.before ?? null],
    ['model error with the study', modelError?.after ?? null],
  ];
  return numbers.flatMap(([quantity, value]) => (value === null ? [] : [[label, quantity, value] as const]));
}

function writePlanForR({ label, band, curve, knots, covariates, added, today, rows }: ScriptPlan): string {
  return [
    `PLANS[["${label}"]] <- list(band = "${band}", curve = "${curve}", knots = c(${knots.join(', ')}), covariates = ${covariates},`,
    `  added = ${added}, today = c(${today.join(', ')}), rows = c(`,
    rows.map((row) => `  ${row.join(', ')}`).join(',\n'),
    '))',
  ].join('\n');
}

function writePlanForPython({ label, band, curve, knots, added, today, rows }: ScriptPlan): string {
  return [
    `PLANS["${label}"] = dict(band="${band}", curve="${curve}", knots=[${knots.join(', ')}], added=${added}, today=[${today.join(', ')}], rows=[`,
    ...rows.map((row) => `    [${row.join(', ')}],`),
    '])',
  ].join('\n');
}

function cutAt(text: string, mark: string): string {
  const at = text.indexOf(mark);
  if (at < 0) throw new Error(`invalid steps; they have no part that begins with: ${mark}`);
  return text.slice(0, at);
}
