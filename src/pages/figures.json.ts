/** All figures for machines: what each finds, where it is, and the hashes of its files. */
import type { APIRoute } from 'astro';
import { addressTo, catalogue, listFile, pageOf, svgOf } from '../site/figures.ts';
import { site } from '../site/site.ts';

export const GET: APIRoute = () =>
  Response.json({
    site: site.name,
    ...(site.demonstration ? { demonstration: 'the studies behind these figures are invented' } : {}),
    dataVersion: site.dataVersion,
    table: addressTo(`data/${site.downloadName}`),
    settings: site.analysis.settings,
    figures: catalogue.figures.map(({ slug, name, figure: { title, caption, alternative } }) => {
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
        files: {
          svg: listFile(slug, 'svg'),
          png: listFile(slug, 'png'),
          png2x: listFile(slug, 'png2x'),
          csv: listFile(slug, 'csv'),
          json: listFile(slug, 'json'),
        },
      };
    }),
    missing: catalogue.missing,
  });
