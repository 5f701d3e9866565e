/** The published trials as a table of study arms, for download and to be opened in a browser. */
import type { APIRoute } from 'astro';
import { trialArms } from '../../../site/publishedTrials.ts';

export const GET: APIRoute = () => new Response(trialArms, { headers: { 'content-type': 'text/csv; charset=utf-8' } });
