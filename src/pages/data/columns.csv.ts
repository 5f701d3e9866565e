/** What stands in each column of the table of study arms, as a table of its own. */
import type { APIRoute } from 'astro';
import { explainColumnsAsCsv } from '../../evidence/dictionary.ts';

export const GET: APIRoute = () =>
  new Response(explainColumnsAsCsv(), { headers: { 'content-type': 'text/csv; charset=utf-8' } });
