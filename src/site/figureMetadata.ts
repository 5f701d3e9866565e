/** A figure described for machines: schema.org as JSON-LD, the picture with the data set it is drawn from. */

import { addressTo, figureOf, fileOf, newestYear, pageOf, pngSizeOf } from './figures.ts';
import { release } from './release.ts';
import { site } from './site.ts';

/** Text for a script element of JSON-LD: nothing in it can end the element. */
export function writeMetadata(slug: string): string {
  const { name, figure } = figureOf(slug);
  const { width, height } = pngSizeOf(slug, 2);
  const creator = { '@type': 'Organization', name: release.authors };
  const download = (path: string, encodingFormat: string) => ({
    '@type': 'DataDownload',
    encodingFormat,
    contentUrl: addressTo(path),
  });
  const metadata = {
    '@context': 'https://schema.org',
    '@type': 'ImageObject',
    name: figure.title,
    alternativeHeadline: name,
    caption: figure.caption,
    description: figure.alternative,
    url: addressTo(pageOf(slug)),
    contentUrl: addressTo(fileOf(slug, 'png2x')),
    thumbnailUrl: addressTo(fileOf(slug, 'png')),
    encodingFormat: 'image/png',
    width,
    height,
    version: site.dataVersion,
    creator,
    isBasedOn: {
      '@type': 'Dataset',
      name: `${site.name}: table of study arms`,
      description: site.demonstration
        ? 'Study arms of resistance training, invented for demonstration; no such studies exist.'
        : `Study arms of resistance training, studies up to ${newestYear}.`,
      version: site.dataVersion,
      creator,
      distribution: [
        download(`data/${site.downloadName}`, 'text/csv'),
        download(fileOf(slug, 'csv'), 'text/csv'),
        download(fileOf(slug, 'json'), 'application/json'),
      ],
    },
  };
  return JSON.stringify(metadata).replaceAll('<', '\\u003c');
}
