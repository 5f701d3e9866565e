/** All figures for machines: what each finds, where it is, and the hashes of its files. */
import type { APIRoute } from 'astro';
import { addressTo, catalogue, listFile, pageOf, svgOf } from '../site/figures.ts';
import { site } from '../site/site.ts';

const LISTED = ['svg', 'png', 'png2x', 'svg85', 'pdf85', 'svg175', 'pdf175', 'csv', 'json'] as const;

export const GET: APIRoute = async () =>
  Response.json({
    site: site.name,
    ...(site.demonstration ? { demonstration: 'the studies behind these figures are invented' } : {}),
    dataVersion: site.dataVersion,
    table: addressTo(`data/${site.downloadName}`),
    settings: site.analysis.settings,
    figures: await Promise.all(
      catalogue.figures.map(async ({ slug, name, figure: { title, caption, alternative } }) => {
        const { width, height } = svgOf(slug);
        return {
          slug,
          name,
          title,
          caption,
          alternative,
          width,
          height,
          page: addressTo(pageOf(slug)),
          embed: addressTo(`${pageOf(slug)}embed/`),
          oembed: addressTo(`${pageOf(slug)}oembed.json`),
          files: Object.fromEntries(
            await Promise.all(LISTED.map(async (kind) => [kind, await listFile(slug, kind)] as const)),
          ),
        };
      }),
    ),
    missing: catalogue.missing,
  });
