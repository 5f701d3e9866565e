/** The Studies page of a reader's own table, in the place of the site's; nothing where there is none. */
import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { studyForest } from '../../figures/studyForest.ts';
import { defaultSettings } from '../../model/settings.ts';
import type { StudyReport } from '../../model/studyReports.ts';
import { addressIn } from '../../ownTable/tableInUse.ts';
import { useConnection, useTable } from '../../ownTable/useTable.ts';
import { FigureView } from '../../ui/FigureView.tsx';
import { Scroll } from '../../ui/Scroll.tsx';
import { Trouble } from '../../ui/Trouble.tsx';
import { UndrawnFigure } from '../../ui/UndrawnFigure.tsx';
import type { StudiesView } from '../analysis/studiesView.ts';
import { GainMap } from './GainMap.tsx';
import { createOwnStudies } from './ownStudies.state.ts';
import { StudyTable } from './SortableStudies.tsx';
import { listFacts, StudiesTable } from './StudiesTable.tsx';
import { StudyArms, StudyFacts, StudyInfluence } from './StudyDetails.tsx';
import { StudyRows } from './StudyRows.tsx';

interface Props {
  /** Id of the part of the page that shows the site's own table. */
  readonly site: string;
  /** Address of the words on how the map's shading is worked out. */
  readonly methods: string;
  /** Address of the page where a study is planned. */
  readonly planPage: string;
}

export function OwnStudies(props: Props) {
  const { table } = useTable('');
  return table.kind === 'own' ? <StudiesOf table={addressIn(table, '')} {...props} /> : null;
}

function StudiesOf({ table, site, methods, planPage }: Props & { readonly table: string }) {
  const state = useMemo(() => createOwnStudies(table, site), [table, site]);
  useConnection(state, true);
  const view = state.view.value;
  const report = state.chosen.value;
  const heading = useRef<HTMLHeadingElement>(null);
  const shown = view && (report?.study ?? '');
  const shownBefore = useRef(shown);
  // The link that was followed is gone: the focus goes to the heading of what it led to.
  useEffect(() => {
    if (shownBefore.current !== null && shownBefore.current !== shown) heading.current?.focus();
    shownBefore.current = shown;
  }, [shown]);
  if (!view) {
    return (
      <div role="status" aria-busy={state.problem.value === null}>
        {state.problem.value === null ? (
          <p>Your table is being read …</p>
        ) : (
          <Trouble what="Your table could not be read" reason={state.problem.value} onRetry={state.retry} />
        )}
      </div>
    );
  }
  const title = (
    <h2 ref={heading} tabIndex={-1}>
      {report?.study ?? 'All studies of your table'}
    </h2>
  );
  return (
    <>
      <div role="alert">
        <Trouble
          what="What the answer is without each study could not be worked out"
          reason={state.problem.value}
          onRetry={state.retry}
        />
      </div>
      {report ? (
        <OneStudy view={view} report={report}>
          {title}
        </OneStudy>
      ) : (
        <AllStudies
          view={view}
          table={table}
          methods={methods}
          planPage={planPage}
          isComplete={view.hasInfluence || state.problem.value !== null}
        >
          {title}
        </AllStudies>
      )}
    </>
  );
}

interface AllStudiesProps {
  readonly view: StudiesView;
  /** Address of the table that is read. */
  readonly table: string;
  readonly methods: string;
  /** Address of the page where a study is planned. */
  readonly planPage: string;
  /** False while each study's influence is still to come. */
  readonly isComplete: boolean;
  /** Heading of the table. */
  readonly children: ComponentChildren;
}

function AllStudies({ view, table, methods, planPage, isComplete, children }: AllStudiesProps) {
  const { reports, wholeBands, settings, map, hasInfluence } = view;
  const facts = useMemo(() => listFacts(reports), [reports]);
  return (
    <>
      <GainMap
        id="own-gain"
        map={map}
        table={table}
        settings={defaultSettings}
        first={null}
        methods={methods}
        planPage={planPage}
      />
      {children}
      <div role="status">{!isComplete && <p>What the answer is without each study is still being worked out …</p>}</div>
      <StudyTable table="own-studies" facts={facts} />
      <Scroll label="All studies">
        {/* Made anew when influence has come: its rows may have been put in another order by then. */}
        <StudiesTable
          key={String(hasInfluence)}
          id="own-studies"
          reports={reports}
          wholeBands={wholeBands}
          settings={settings}
          link={(study) => <a href={`#${new URLSearchParams({ study })}`}>{study}</a>}
        />
      </Scroll>
    </>
  );
}

interface OneStudyProps {
  readonly view: StudiesView;
  readonly report: StudyReport;
  /** Heading with the study's name. */
  readonly children: ComponentChildren;
}

function OneStudy({ view, report, children }: OneStudyProps) {
  const figure = useMemo(() => studyForest(report, view.settings), [report, view]);
  return (
    <>
      <p class="small">
        <a href="#all">All studies of your table</a>
      </p>
      {children}
      <div class="pair">
        <StudyFacts report={report} />
        {figure.table.rows.length > 0 ? (
          <FigureView figure={figure} heading="h3" />
        ) : (
          <UndrawnFigure figure={figure} heading="h3" />
        )}
      </div>
      <h3>What the answer is without it</h3>
      <StudyInfluence report={report} wholeBands={view.wholeBands} settings={view.settings} />
      <h3>Its arms</h3>
      <StudyArms arms={report.arms} />
      <h3>Its rows</h3>
      <StudyRows rows={report.rows} settings={view.settings} heading="h4" />
    </>
  );
}
