/** References of the published trials, for download. */
import type { APIRoute } from 'astro';
import { trialStudies } from '../../../site/publishedTrials.ts';

export const GET: APIRoute = () => new Response(trialStudies, { headers: { 'content-type': 'text/csv; charset=utf-8' } });
