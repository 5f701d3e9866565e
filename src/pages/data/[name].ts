/** The table of study arms as a file of the site: for download, and for the calculator to read. */
import type { APIRoute } from 'astro';
import { site } from '../../site/site.ts';

export function getStaticPaths() {
  return [{ params: { name: site.downloadName } }];
}

export const GET: APIRoute = () => new Response(site.text, { headers: { 'content-type': 'text/csv; charset=utf-8' } });
