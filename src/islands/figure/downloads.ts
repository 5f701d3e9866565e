/** The files of a figure made in the browser: the same texts that the build makes, PNG by the browser's own drawing. */
import * as Plot from '@observablehq/plot';
import type { CataloguedFigure } from '../../figures/catalogue.ts';
import type { Reference } from '../../figures/citing/references.ts';
import { FIGURE_FILES, type FigureFile } from '../../figures/downloads.ts';
import { type FileContext, nameFile, writeFigureCsv, writeFigureJson } from '../../figures/figureFiles.ts';
import { writePicture } from '../../figures/pictureFile.ts';
import type { ColumnWidth } from '../../figures/printLook.ts';
import type { SvgFile } from '../../figures/svgFile.ts';
import { stripNames } from '../../ui/plainSvg.ts';
import { saveFile } from '../../ui/saveFile.ts';
import { SITE_NAME } from '../../ui/siteName.ts';

/** PDF is made at the build alone: what writes it is larger than all else that a page loads. */
export const LIVE_FILES = FIGURE_FILES.filter(
  (file): file is Exclude<FigureFile, { of: 'Reference' } | { type: 'application/pdf' }> =>
    file.of !== 'Reference' && file.type !== 'application/pdf',
);
type LiveKind = (typeof LIVE_FILES)[number]['kind'];

export const REFERENCE_FILES = FIGURE_FILES.filter(
  (file): file is Extract<FigureFile, { of: 'Reference' }> => file.of === 'Reference',
);

export function saveReference(
  slug: string,
  { kind, ending, type }: (typeof REFERENCE_FILES)[number],
  { bibtex, ris, cslJson }: Reference,
  context: FileContext,
): void {
  const texts = { bib: bibtex, ris, csl: cslJson };
  saveFile({ name: `${nameFile(slug, context)}${ending}`, type, text: texts[kind] });
}

/** @throws where the browser cannot draw the picture */
export async function saveFigure(
  made: CataloguedFigure,
  { kind, ending, type }: (typeof LIVE_FILES)[number],
  context: FileContext,
): Promise<void> {
  const svg = (width?: ColumnWidth) => drawFile(made, context, width).text;
  const png = (scale: number) => drawPng(drawFile(made, context), scale);
  const makers: Readonly<Record<LiveKind, () => Promise<Blob> | string>> = {
    svg: () => svg(),
    png: () => png(1),
    png2x: () => png(2),
    svg85: () => svg(85),
    svg175: () => svg(175),
    csv: () => writeFigureCsv(made, context),
    json: () => writeFigureJson(made, context),
  };
  saveFile({ name: `${nameFile(made.slug, context)}${ending}`, type, text: await makers[kind]() });
}

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
