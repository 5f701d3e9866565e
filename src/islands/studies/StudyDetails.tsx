/** What is known of one study: its facts, what the answer is without it, and its arms. */
import { isEstimated } from '../../evidence/deriveDesign.ts';
import type { Arm, ArmColumn } from '../../evidence/schema.ts';
import { formatNumber, formatSignificant, slopeUnit } from '../../figures/format.ts';
import { showFineTarget, showSlope, showSpan, showWeight, whyNone } from '../../figures/studyWords.ts';
import type { Settings } from '../../model/settings.ts';
import type { StudyReport, WholeBand } from '../../model/studyReports.ts';
import { countOf } from '../../numerics/countOf.ts';
import { writePercent } from '../../numerics/percent.ts';
import { LOAD_NAMES } from '../../practice/loadNames.ts';
import { Facts } from '../../ui/Facts.tsx';
import { Scroll } from '../../ui/Scroll.tsx';
import { type ColumnHead, TableHead } from '../../ui/TableHead.tsx';

export function StudyFacts({ report }: { readonly report: StudyReport }) {
  const arms = report.rows.map(({ arm }) => arm);
  const facts = [
    ['Year', String(report.year)],
    ['Design', report.design],
    ['Concerns about bias', report.concerns ?? 'not judged'],
    ['Training status', report.trainingStatus ?? 'not reported'],
    ['Sex', listed(arms.map(({ sex }) => sex))],
    ['Mean age, years', listed(arms.map(({ age_mean_years }) => age_mean_years))],
    ['People', String(report.people)],
    ['Arms and rows', `${countOf(report.arms.length, 'arm')}, ${countOf(report.rows.length, 'row')}`],
    ['Outcomes', report.outcomes.join(', ')],
    [
      'Load',
      report.load
        ? `${showSpan(report.load)}\u00a0% of 1RM${arms.some((arm) => isEstimated(arm, 'load_pct_1rm')) ? ', estimated from repetition maxima' : ''}`
        : 'not reported',
    ],
    ['Reserve', report.reserve ? `${showSpan(report.reserve)} repetitions` : 'not reported'],
    ['Failure was', listed(arms.map(({ failure_definition }) => failure_definition))],
    ['Reserve is known as', listed(arms.map(({ reserve_basis }) => reserve_basis))],
    ['Its numbers are', listed(report.rows.map(({ effect }) => effect?.restsOn ?? 'not enough for an effect'))],
    ['Read in', listed(arms.map(({ how_read }) => how_read))],
  ] as const;
  return <Facts facts={facts} />;
}

/** Different values of a fact over the rows, missing ones named. */
function listed(values: readonly (string | number | null)[]): string {
  return [...new Set(values.map((value) => value ?? 'not reported'))].join(', ');
}

const INFLUENCE_COLUMNS: readonly ColumnHead[] = [
  'Loads',
  ['Rows', 'number'],
  ['Weight', 'number'],
  ['Slope with it', 'number'],
  ['Slope without it', 'number'],
  ['Target with it', 'number'],
  ['Target without it', 'number'],
  ['Distance', 'number'],
];

interface InfluenceProps {
  readonly report: StudyReport;
  readonly wholeBands: readonly WholeBand[];
  readonly settings: Pick<Settings, 'metric' | 'confidence' | 'keptShare' | 'outcome'>;
}

/** What a study counts for in each band, and slope and target with and without it. */
export function StudyInfluence({ report, wholeBands, settings }: InfluenceProps) {
  const { metric, confidence, keptShare, outcome } = settings;
  const parts = report.bands.flatMap((own) =>
    wholeBands.filter(({ name }) => name === own.band).map((whole) => ({ own, whole })),
  );
  if (parts.length === 0) {
    return (
      <p>
        No row of it is in the fit of {outcome} against reserve, so slope and target are the same without it. Its rows
        below say why.
      </p>
    );
  }
  return (
    <>
      <Scroll label="With and without this study">
        <table>
          <caption>
            Mean slope for each repetition in reserve, in {slopeUnit(metric)}, and the target:{' '}
            {`the reserve that keeps ${writePercent(keptShare)} of the ${outcome} at reserve 0, with ${writePercent(confidence)} intervals.`}{' '}
            Distance: Cook's, how far all coefficients move.
          </caption>
          <TableHead columns={INFLUENCE_COLUMNS} />
          <tbody>
            {parts.map(({ own, whole }) => (
              <tr key={own.band}>
                <th scope="row">{LOAD_NAMES[own.band]}</th>
                <td class="number">{own.rows}</td>
                <td class="number">{showWeight(own.weight)}</td>
                <td class="number">{showSlope(whole.slope, metric, true)}</td>
                <td class="number">{own.influence ? showSlope(own.influence.slopeWithout, metric, true) : 'none'}</td>
                <td class="number">{showFineTarget(whole.band.target, true)}</td>
                <td class="number">{own.influence ? showFineTarget(own.influence.targetWithout, true) : 'none'}</td>
                <td class="number">
                  {own.influence?.cooksDistance == null ? 'none' : formatNumber(own.influence.cooksDistance, 2)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      {parts.flatMap(({ own, whole }) => {
        const without = own.influence?.reason ?? own.influence?.targetWithout.reason;
        const all = whyNone(whole.band);
        const name = LOAD_NAMES[own.band];
        return [
          ...(all ? [`${name}, all studies: ${all}.`] : []),
          ...(without ? [`${name}, without it: ${without}.`] : []),
        ].map((note) => (
          <p key={note} class="small">
            {note}
          </p>
        ));
      })}
    </>
  );
}

const ARM_FACTS: readonly {
  readonly name: string;
  readonly of: (arm: Arm) => string | number | null;
  readonly number?: boolean;
}[] = [
  { name: 'Cohort', of: ({ cohort }) => cohort },
  { name: 'People', of: showPeople, number: true },
  { name: 'Exercise', of: ({ exercise }) => exercise },
  { name: 'Joints', of: ({ joints }) => joints },
  { name: 'Load, %', of: showLoad, number: true },
  { name: 'Repetitions', of: (arm) => showPrinted(arm, 'reps_per_set'), number: true },
  { name: 'Sets', of: (arm) => showPrinted(arm, 'sets'), number: true },
  { name: 'Sessions a week', of: (arm) => showPrinted(arm, 'sessions_per_week'), number: true },
  { name: 'Weeks', of: (arm) => showPrinted(arm, 'weeks'), number: true },
  { name: 'Reserve', of: (arm) => showPrinted(arm, 'reserve_reps'), number: true },
  { name: 'Its SD', of: ({ reserve_sd: sd }) => (sd === null ? null : formatSignificant(sd, 2)), number: true },
  { name: 'Known as', of: ({ reserve_basis }) => reserve_basis },
  { name: 'Failure was', of: ({ failure_definition }) => failure_definition },
  { name: 'Attempted', of: ({ attempted_failure }) => yesNo(attempted_failure) },
  { name: 'Beyond failure', of: ({ beyond_failure }) => beyond_failure ?? 'none' },
];

/** A load from a repetition maximum is marked. */
function showLoad(arm: Arm): string | number | null {
  const { load_pct_1rm: load } = arm;
  if (load === null || !isEstimated(arm, 'load_pct_1rm')) return showPrinted(arm, 'load_pct_1rm');
  return `${formatNumber(load, 0)} (estimated from ${showPrinted(arm, 'load_rm')} RM)`;
}

/** People of an arm whose paper prints a total only are marked. */
function showPeople({ n, n_total: total, derived }: Arm): string | number | null {
  return derived?.some(({ column }) => column === 'n') ? `${n} (a share of ${total})` : n;
}

/** “8–12” where the paper prints a range, which counts by its middle. */
function showPrinted(arm: Arm, column: ArmColumn): string | number | null {
  const range = arm.ranges?.[column];
  const value = arm[column];
  return range ? `${range.low}–${range.high}` : typeof value === 'boolean' ? yesNo(value) : value;
}

function yesNo(value: boolean | null): string | null {
  return value === null ? null : value ? 'yes' : 'no';
}

/** Each arm and exercise of a study: its training and how near failure it went. */
export function StudyArms({ arms }: { readonly arms: readonly Arm[] }) {
  return (
    <Scroll label="Arms">
      <table class="study-arms">
        <caption>
          Reserve: mean repetitions in reserve when the sets ended, the SD what that mean may have been off by. Arms of
          one cohort are the same people. A dash: not reported.
        </caption>
        <TableHead
          columns={['Arm', ...ARM_FACTS.map(({ name, number }) => (number ? ([name, 'number'] as const) : name))]}
        />
        <tbody>
          {arms.map((arm) => (
            <tr key={arm.line}>
              <th scope="row">{arm.arm}</th>
              {ARM_FACTS.map(({ name, of, number }) => (
                <td key={name} class={number ? 'number' : undefined}>
                  {of(arm) ?? '–'}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}
