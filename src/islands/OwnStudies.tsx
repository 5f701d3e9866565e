/** The Studies page of a reader's own table, in the place of the site's; nothing where there is none. */
import { useEffect, useState } from 'preact/hooks';
import { evidenceMap } from '../figures/evidenceMap.ts';
import { studyForest } from '../figures/studyForest.ts';
import { defaultSettings } from '../model/settings.ts';
import type { StudyReport } from '../model/studyReports.ts';
import type { WorkerReply, WorkerRequest } from './analysisWorker.ts';
import { FigureView } from './FigureView.tsx';
import { OWN_TABLE, readMark } from './ownTable.ts';
import { Scroll } from './Scroll.tsx';
import { listFacts, StudiesTable } from './StudiesTable.tsx';
import { StudyArms, StudyFacts, StudyInfluence } from './StudyDetails.tsx';
import { StudyRows } from './StudyRows.tsx';
import { StudyTable } from './StudyTable.tsx';
import type { StudiesView } from './studiesView.ts';

/** @param site id of the part of the page that shows the site's own table */
export function OwnStudies({ site }: { readonly site: string }) {
  const [view, setView] = useState<StudiesView | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [isOwn, setIsOwn] = useState(false);
  const [chosen, setChosen] = useState<string | null>(null);
  useEffect(() => {
    if (!readMark()) return;
    setIsOwn(true);
    document.getElementById(site)?.setAttribute('hidden', '');
    const worker = new Worker(new URL('./analysisWorker.ts', import.meta.url), { type: 'module' });
    const request: WorkerRequest = { kind: 'studies', id: 0, table: OWN_TABLE, settings: defaultSettings };
    worker.addEventListener('message', ({ data }: MessageEvent<WorkerReply>) => {
      if (data.kind === 'problem') setProblem(data.problem);
      if (data.kind === 'studies') setView(data.studies);
    });
    worker.postMessage(request);
    return () => worker.terminate();
  }, [site]);
  useEffect(() => {
    const follow = () => setChosen(new URLSearchParams(location.hash.slice(1)).get('study'));
    follow();
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, []);
  if (!isOwn) return null;
  if (problem !== null) return <p class="problem">Your table could not be read: {problem}</p>;
  if (!view) return <p role="status">Your table is being read …</p>;
  const report = view.reports.find(({ study }) => study === chosen);
  return report ? <OneStudy view={view} report={report} /> : <AllStudies view={view} />;
}

function AllStudies({ view }: { readonly view: StudiesView }) {
  const { reports, wholeBands, settings, map, hasInfluence } = view;
  return (
    <>
      <div class="map">
        <FigureView figure={evidenceMap(map)} />
      </div>
      <h2>All studies of your table</h2>
      {!hasInfluence && <p role="status">What the answer is without each study is still being worked out …</p>}
      <div key={String(hasInfluence)}>
        <StudyTable table="own-studies" facts={listFacts(reports)} />
        <Scroll label="All studies">
          <StudiesTable
            id="own-studies"
            reports={reports}
            wholeBands={wholeBands}
            settings={settings}
            link={(study) => <a href={`#${new URLSearchParams({ study })}`}>{study}</a>}
          />
        </Scroll>
      </div>
    </>
  );
}

function OneStudy({ view, report }: { readonly view: StudiesView; readonly report: StudyReport }) {
  return (
    <>
      <p class="small">
        <a href="#all">All studies of your table</a>
      </p>
      <h2>{report.study}</h2>
      <div class="pair">
        <StudyFacts report={report} />
        <FigureView figure={studyForest(report, view.settings)} />
      </div>
      <h3>What the answer is without it</h3>
      <StudyInfluence report={report} wholeBands={view.wholeBands} settings={view.settings} />
      <h3>Its arms</h3>
      <StudyArms arms={report.arms} />
      <h3>Its rows</h3>
      <StudyRows rows={report.rows} settings={view.settings} />
    </>
  );
}
