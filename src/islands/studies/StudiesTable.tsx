/** The table of all studies, as the page is built with it and as a reader's own table is shown. */
import type { ComponentChildren } from 'preact';
import { slopeUnit } from '../../figures/format.ts';
import { showFineTarget, showSlope, showSpan, showWeight } from '../../figures/studyWords.ts';
import type { Settings } from '../../model/settings.ts';
import type { StudyInBand, StudyReport, WholeBand } from '../../model/studyReports.ts';
import { LOAD_NAMES } from '../../practice/loadNames.ts';

interface Props {
  readonly id: string;
  readonly reports: readonly StudyReport[];
  readonly wholeBands: readonly WholeBand[];
  readonly settings: Pick<Settings, 'metric' | 'outcome'>;
  /** The study's name as a link to what is known of it. */
  readonly link: (study: string) => ComponentChildren;
}

const COLUMNS = [
  ['Study', 'words'],
  ['Year', 'number'],
  ['Design', 'words'],
  ['Concerns', 'words'],
  ['Training', 'words'],
  ['People', 'number'],
  ['Arms', 'number'],
  ['Rows', 'number'],
  ['Outcomes', 'words'],
  ['Load, %', 'number'],
  ['Reserve', 'number'],
] as const;
const BAND_COLUMNS = ['Weight', 'Slope without', 'Target without'] as const;

export function StudiesTable({ id, reports, wholeBands, settings, link }: Props) {
  const { metric, outcome } = settings;
  return (
    <table id={id} class="studies">
      <caption>
        Weight: share of all weight in the fit of {outcome} at these loads. Slope: mean change for each repetition in
        reserve, in {slopeUnit(metric)}. Target: repetitions in reserve. A dash: the study has no row in that fit.
      </caption>
      <thead>
        <tr>
          {COLUMNS.map(([name, sort], i) => (
            <th key={name} scope="col" rowSpan={2} data-column={i} data-sort={sort} class={classOf(sort === 'number')}>
              {name}
            </th>
          ))}
          {wholeBands.map(({ name }) => (
            <th key={name} scope="colgroup" colSpan={BAND_COLUMNS.length}>
              {LOAD_NAMES[name]}
            </th>
          ))}
        </tr>
        <tr>
          {wholeBands.flatMap(({ name: band }, b) =>
            BAND_COLUMNS.map((name, i) => (
              <th
                key={`${band} ${name}`}
                scope="col"
                class="number"
                data-column={COLUMNS.length + b * BAND_COLUMNS.length + i}
                data-sort="number"
              >
                {name}
              </th>
            )),
          )}
        </tr>
      </thead>
      <tbody>
        {reports.map((report) => (
          <Row key={report.study} report={report} wholeBands={wholeBands} metric={metric} link={link} />
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row" colSpan={COLUMNS.length}>
            With all studies
          </th>
          {wholeBands.flatMap(({ name, slope, band }) => [
            <td key={`${name} weight`} class="number">
              {band.failure ? 'none' : showWeight(1)}
            </td>,
            <td key={`${name} slope`} class="number">
              {showSlope(slope, metric, false)}
            </td>,
            <td key={`${name} target`} class="number">
              {showFineTarget(band.target, false)}
            </td>,
          ])}
        </tr>
      </tfoot>
    </table>
  );
}

interface RowProps extends Pick<Props, 'wholeBands' | 'link'> {
  readonly report: StudyReport;
  readonly metric: Settings['metric'];
}

function Row({ report, wholeBands, metric, link }: RowProps) {
  const { study, year, design, concerns, trainingStatus, people, arms, rows, outcomes, load, reserve } = report;
  const words = [study, ...new Set(rows.flatMap(({ arm }) => [arm.exercise, arm.muscle, arm.measure]))];
  return (
    <tr
      data-words={words.filter(Boolean).join(' ')}
      data-design={design}
      data-concerns={concerns ?? NOT_REPORTED}
      data-training={trainingStatus}
      data-outcomes={outcomes.join(' ')}
    >
      <th scope="row">{link(study)}</th>
      <td class="number" data-value={year}>
        {year}
      </td>
      <td>{design}</td>
      <td>{concerns ?? NOT_REPORTED}</td>
      <td>{trainingStatus}</td>
      <td class="number" data-value={people}>
        {people}
      </td>
      <td class="number" data-value={arms.length}>
        {arms.length}
      </td>
      <td class="number" data-value={rows.length}>
        {rows.length}
      </td>
      <td>{outcomes.join(', ')}</td>
      <td class="number" data-value={load?.low}>
        {showSpan(load)}
      </td>
      <td class="number" data-value={reserve?.high}>
        {showSpan(reserve)}
      </td>
      {wholeBands.flatMap(({ name }) =>
        bandCells(
          name,
          report.bands.find(({ band }) => band === name),
          metric,
        ),
      )}
    </tr>
  );
}

function bandCells(name: string, own: StudyInBand | undefined, metric: Settings['metric']) {
  const cells = own
    ? ([
        [own.weight, showWeight(own.weight)],
        [
          own.influence?.slopeWithout?.estimate,
          own.influence ? showSlope(own.influence.slopeWithout, metric, false) : 'none',
        ],
        [
          own.influence?.targetWithout.point,
          own.influence ? showFineTarget(own.influence.targetWithout, false) : 'none',
        ],
      ] as const)
    : BAND_COLUMNS.map(() => [undefined, '–'] as const);
  return cells.map(([value, shown], i) => (
    <td key={`${name} ${BAND_COLUMNS[i]}`} class="number" data-value={value ?? undefined}>
      {shown}
    </td>
  ));
}

const NOT_REPORTED = 'not reported';

/** What the studies of a table can be chosen by. */
export function listFacts(reports: readonly StudyReport[]) {
  const wordsOf = (choose: (report: StudyReport) => readonly (string | null)[]) =>
    [...new Set(reports.flatMap((report) => choose(report).map((word) => word ?? NOT_REPORTED)))].sort();
  return [
    { name: 'design', label: 'Design', options: wordsOf(({ design }) => [design]) },
    { name: 'concerns', label: 'Concerns', options: wordsOf(({ concerns }) => [concerns]) },
    { name: 'training', label: 'Training', options: wordsOf(({ trainingStatus }) => [trainingStatus]) },
    { name: 'outcomes', label: 'Outcome', options: wordsOf(({ outcomes }) => outcomes) },
  ];
}

function classOf(isNumber: boolean): string | undefined {
  return isNumber ? 'number' : undefined;
}
