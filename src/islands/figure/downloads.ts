/** The files of a figure made in the browser: the same texts that the build makes, PNG by the browser's own drawing. */
import * as Plot from '@observablehq/plot';
import type { CataloguedFigure } from '../../figures/catalogue.ts';
import type { Reference } from '../../figures/citing/references.ts';
import { type FileContext, nameFile, writeFigureCsv, writeFigureJson } from '../../figures/figureFiles.ts';
import { writePicture } from '../../figures/pictureFile.ts';
import type { ColumnWidth } from '../../figures/printLook.ts';
import type { SvgFile } from '../../figures/svgFile.ts';
import { stripNames } from '../../ui/plainSvg.ts';
import { saveFile } from '../../ui/saveFile.ts';
import { SITE_NAME } from '../../ui/siteName.ts';

/** PDF is made at the build alone: what writes it is larger than all else that a page loads. */
export const LIVE_FILES = [
  { of: 'Picture', ending: '.svg', label: 'SVG' },
  { of: 'Picture', ending: '@1x.png', label: 'PNG' },
  { of: 'Picture', ending: '@2x.png', label: 'PNG, twice the size' },
  { of: 'For print', ending: '-85mm.svg', label: 'SVG, 85 mm wide' },
  { of: 'For print', ending: '-175mm.svg', label: 'SVG, 175 mm wide' },
  { of: 'Numbers', ending: '.csv', label: 'CSV of the plotted numbers' },
  { of: 'Numbers', ending: '.json', label: 'JSON of the analysis' },
] as const;
type Ending = (typeof LIVE_FILES)[number]['ending'];

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
export async function saveFigure(made: CataloguedFigure, ending: Ending, context: FileContext): Promise<void> {
  const svg = (width?: ColumnWidth) => ({ type: 'image/svg+xml', text: drawFile(made, context, width).text });
  const png = async (scale: number) => ({ type: 'image/png', text: await drawPng(drawFile(made, context), scale) });
  const makers: Readonly<Record<Ending, () => Promise<Saved> | Saved>> = {
    '.svg': () => svg(),
    '@1x.png': () => png(1),
    '@2x.png': () => png(2),
    '-85mm.svg': () => svg(85),
    '-175mm.svg': () => svg(175),
    '.csv': () => ({ type: 'text/csv', text: writeFigureCsv(made, context) }),
    '.json': () => ({ type: 'application/json', text: writeFigureJson(made, context) }),
  };
  saveFile({ name: `${nameFile(made.slug, context)}${ending}`, ...(await makers[ending]()) });
}

type Saved = Omit<Parameters<typeof saveFile>[0], 'name'>;

function drawFile(made: CataloguedFigure, context: FileContext, column?: ColumnWidth): SvgFile {
  const draw = (plot: Plot.PlotOptions) => {
    const svg = Plot.plot({ ...plot, ariaLabel: null });
    stripNames(svg);
    return new XMLSerializer().serializeToString(svg);
  };
  return writePicture({ made, context, site: SITE_NAME, draw }, column);
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
