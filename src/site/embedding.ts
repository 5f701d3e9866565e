/** How a figure is put into another page: the frame's markup, and oEmbed 1.0 (oembed.com) for pages that ask. */
import { addressTo, figureOf, fileOf, pageOf, pngSizeOf, svgOf } from './figures.ts';
import { site } from './site.ts';

/** Pixels of a frame; wide enough for the wide drawing with its margins. */
const FRAME_WIDTH = 720;
/** Under the picture: caption, source and notice. */
const WORDS_HEIGHT = 220;

export function frameOf(slug: string): { readonly html: string; readonly width: number; readonly height: number } {
  const height = Math.round(svgOf(slug).height + WORDS_HEIGHT);
  const title = escapeAttribute(figureOf(slug).figure.title);
  const html = `<iframe src="${escapeAttribute(addressTo(`${pageOf(slug)}embed/`))}" title="${title}" width="100%" height="${height}" style="border:0;max-width:${FRAME_WIDTH}px" loading="lazy"></iframe>`;
  return { html, width: FRAME_WIDTH, height };
}

export function oembedOf(slug: string): object {
  const { figure } = figureOf(slug);
  const { width, height } = pngSizeOf(slug, 1);
  return {
    version: '1.0',
    type: 'rich',
    title: figure.title,
    provider_name: site.name,
    provider_url: addressTo(''),
    thumbnail_url: addressTo(fileOf(slug, 'png')),
    thumbnail_width: width,
    thumbnail_height: height,
    ...frameOf(slug),
  };
}

function escapeAttribute(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
