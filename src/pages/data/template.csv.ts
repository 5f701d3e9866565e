/** An empty table of study arms: the header alone. */
import type { APIRoute } from 'astro';
import { writeArms } from '../../evidence/writeTable.ts';

export const GET: APIRoute = () =>
  new Response(writeArms([]), { headers: { 'content-type': 'text/csv; charset=utf-8' } });
