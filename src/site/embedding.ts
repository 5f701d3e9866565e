/** How a figure is put into another page: the frame's markup, and oEmbed 1.0 (oembed.com) for pages that ask. */
import { estimateHeight, FRAME_WIDTH } from '../figures/citing/frameHeight.ts';
import { writeFrame } from '../ui/frame.ts';
import { addressTo, figureOf, fileOf, pageOf, pngSizeOf } from './figures.ts';
import { site } from './site.ts';

export function frameOf(slug: string): { readonly html: string; readonly width: number; readonly height: number } {
  const { figure } = figureOf(slug);
  const height = estimateHeight(figure, site.demonstration);
  const html = writeFrame({ address: addressTo(`${pageOf(slug)}embed/`), title: figure.title, height });
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
