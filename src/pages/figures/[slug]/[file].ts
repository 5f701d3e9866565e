/** The files of a figure: picture, numbers, analysis, reference, and what a page that embeds it asks for. */
import type { APIRoute } from 'astro';
import { FIGURE_FILES, type FileKind } from '../../../figures/downloads.ts';
import { oembedOf } from '../../../site/embedding.ts';
import { catalogue, fileName, writeFile } from '../../../site/figures.ts';

interface Props {
  readonly slug: string;
  readonly kind: FileKind | 'oembed';
}

export function getStaticPaths() {
  return catalogue.figures.flatMap(({ slug }) => [
    ...FIGURE_FILES.map(({ kind }) => ({ params: { slug, file: fileName(slug, kind) }, props: { slug, kind } })),
    { params: { slug, file: 'oembed.json' }, props: { slug, kind: 'oembed' } },
  ]);
}

export const GET: APIRoute<Props> = async ({ props: { slug, kind } }) => {
  if (kind === 'oembed') return Response.json(oembedOf(slug));
  const { body, type } = await writeFile(slug, kind);
  return new Response(body, { headers: { 'content-type': type } });
};
