/** What the notice of the table in use says; fetched only where there is something to say. */
import { countOf, countStudies } from '../numerics/countOf.ts';
import type { TableInUse } from './tableInUse.ts';

/**
 * @param reads true on pages that read an own table
 * @param isNew true where it changed while the page stood open, in whichever tab
 */
export function stateInUse(table: TableInUse, reads: boolean, isNew: boolean): string {
  if (table.kind === 'site')
    return `${isNew ? 'Your table was put away: this' : 'This'} page shows the site’s own table.`;
  if (table.kind === 'missing')
    return `A table of your own is meant here, but cannot be read: ${table.reason}. This page shows the site’s own table.`;
  const { name, rows, studies, reading } = table.about;
  const change = isNew ? 'The table was changed. ' : '';
  return reads
    ? `${change}This page reads your own table, ${name}: ${countOf(rows, 'row')} of ${countStudies(studies)}.${reading ? ` ${reading}` : ''}`
    : `${change}This page shows the site’s own table, not yours, ${name}.`;
}
