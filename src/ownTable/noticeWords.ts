/** What the notice of the table in use says; fetched only where there is something to say. */
import { countOf, countStudies } from '../numerics/countOf.ts';
import type { CitedTable } from './citedTable.ts';
import { citedVersionOf } from './citedVersion.ts';
import { addressOf, type TableInUse } from './tableInUse.ts';

/**
 * @param reads true on pages that read an own table
 * @param cited the table that the address names, where the page is of no other
 * @param isNew true where it changed while the page stood open, in whichever tab
 */
export function stateInUse(table: TableInUse, reads: boolean, cited: CitedTable | null, isNew: boolean): string {
  if (cited?.own && (table.kind !== 'own' || citedVersionOf(addressOf(table.about)) !== cited.version))
    return `${stateChange(table, isNew)}The address of this page names another table of somebody’s own, which is not in use here${table.kind === 'own' ? `: yours is ${table.about.name}` : ''}. Nothing is shown in its place.`;
  if (table.kind === 'site')
    return `${isNew ? 'Your table was put away: this' : 'This'} page shows the site’s own table.`;
  if (table.kind === 'missing')
    return `A table of your own is meant here, but cannot be read: ${table.reason}. This page shows the site’s own table.`;
  const { name, rows, studies, reading } = table.about;
  return reads
    ? `${isNew ? 'The table was changed. ' : ''}This page reads your own table, ${name}: ${countOf(rows, 'row')} of ${countStudies(studies)}.${reading ? ` ${reading}` : ''}`
    : `${isNew ? 'Your own table was changed. ' : ''}This page shows the site’s own table, not yours, ${name}.`;
}

function stateChange(table: TableInUse, isNew: boolean): string {
  if (table.kind === 'missing') return `A table of your own is meant, but cannot be read: ${table.reason}. `;
  if (!isNew) return '';
  return table.kind === 'site' ? 'Your table was put away. ' : 'The table was changed. ';
}
