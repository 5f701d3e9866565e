/** The files of a figure made in the browser: the same texts that the build makes, PNG by the browser's own drawing. */
import * as Plot from '@observablehq/plot';
import type { CataloguedFigure } from '../../figures/catalogue.ts';
import type { Reference } from '../../figures/citing/references.ts';
import {
  type FileContext,
  nameFile,
  PICTURE_NOTICE,
  stateSource,
  writeFigureCsv,
  writeFigureJson,
} from '../../figures/figureFiles.ts';
import { FILE_WIDTH, type SvgFile, writeSvgFile } from '../../figures/svgFile.ts';
import { stripNames } from '../../ui/plainSvg.ts';
import { saveFile } from '../../ui/saveFile.ts';
import { SITE_NAME } from '../../ui/siteName.ts';

export const LIVE_FILES = [
  { ending: '.svg', label: 'SVG' },
  { ending: '@1x.png', label: 'PNG' },
  { ending: '@2x.png', label: 'PNG, twice the size' },
  { ending: '.csv', label: 'CSV of the plotted numbers' },
  { ending: '.json', label: 'JSON of the analysis' },
] as const;

export const REFERENCE_FILES = [
  { ending: '.bib', label: 'BibTeX' },
  { ending: '.ris', label: 'RIS' },
  { ending: '.csl.json', label: 'CSL-JSON' },
] as const;

export function saveReference(
  slug: string,
  ending: (typeof REFERENCE_FILES)[number]['ending'],
  { bibtex, ris, cslJson }: Reference,
  context: FileContext,
): void {
  const files = {
    '.bib': { type: 'application/x-bibtex', text: bibtex },
    '.ris': { type: 'application/x-research-info-systems', text: ris },
    '.csl.json': { type: 'application/vnd.citationstyles.csl+json', text: cslJson },
  };
  saveFile({ name: `${nameFile(slug, context)}${ending}`, ...files[ending] });
}

/** @throws where the browser cannot draw the picture */
export async function saveFigure(
  made: CataloguedFigure,
  ending: (typeof LIVE_FILES)[number]['ending'],
  context: FileContext,
): Promise<void> {
  const name = `${nameFile(made.slug, context)}${ending}`;
  if (ending === '.csv') saveFile({ name, type: 'text/csv', text: writeFigureCsv(made, context) });
  else if (ending === '.json') saveFile({ name, type: 'application/json', text: writeFigureJson(made, context) });
  else if (ending === '.svg') saveFile({ name, type: 'image/svg+xml', text: drawFile(made, context).text });
  else
    saveFile({ name, type: 'image/png', text: await drawPng(drawFile(made, context), ending === '@2x.png' ? 2 : 1) });
}

function drawFile({ slug, figure }: CataloguedFigure, context: FileContext): SvgFile {
  const plot = { ...figure.plot, width: FILE_WIDTH };
  const svg = Plot.plot({ ...plot, ariaLabel: null });
  stripNames(svg);
  return writeSvgFile(new XMLSerializer().serializeToString(svg), plot, {
    title: figure.title,
    alternative: figure.alternative,
    source: stateSource(slug, SITE_NAME, context),
    notice: context.demonstration ? PICTURE_NOTICE : null,
  });
}

async function drawPng({ text, width, height }: SvgFile, scale: number): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }));
  try {
    const picture = new Image();
    picture.src = address;
    await picture.decode();
    const canvas = document.createElement('canvas');
    canvas.width = scale * width;
    canvas.height = scale * height;
    canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
    return await new Promise((resolve, reject) => {
      canvas.toBlob((blob) => {
        if (blob) resolve(blob);
        else reject(new Error(`no picture of ${canvas.width} × ${canvas.height} pixels could be made here`));
      }, 'image/png');
    });
  } finally {
    URL.revokeObjectURL(address);
  }
}
