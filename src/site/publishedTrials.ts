/** The published trials that come with the project: served beside the site's own table, to be opened like a reader's. */
import { readArmsToAnalyse } from '../evidence/table.ts';
import type { Trials } from '../islands/table/PublishedTrials.tsx';
import { stateTable } from '../ownTable/stateTable.ts';
import { pathTo, site } from './site.ts';
import { readSource, requireNoProblems } from './sources.ts';

const ARMS = 'data/published/arms.csv';

/** The table as it stands in the file. */
export const trialArms = readSource(ARMS, 'table of published trials');
/** Their references. */
export const trialStudies = readSource('data/published/studies.csv', 'list of published trials');

/** What the page that opens them says of them; null where the site is built from them, so that there is nothing to open. */
export const trials = site.text === trialArms ? null : describe();

function describe(): Trials {
  const name = 'published-trials.csv';
  const { rows, studies, reading } = stateTable(name, requireNoProblems(ARMS, readArmsToAnalyse(trialArms, ARMS)).arms);
  const address = pathTo('data/published/arms.csv');
  return { name, address, references: pathTo('data/published/studies.csv'), rows, studies, reading: reading ?? '' };
}
