/** The picture of a figure as a file, for screens or for a column of print: the same at the build and in a browser. */
import type { PlotOptions } from '@observablehq/plot';
import type { CataloguedFigure } from './catalogue.ts';
import { type FileContext, PICTURE_NOTICE, stateSource } from './figureFiles.ts';
import { COLUMNS, type ColumnWidth } from './printLook.ts';
import { FILE_WIDTH, SCREEN_LOOK, type SvgFile, writeSvgFile } from './svgFile.ts';

interface Drawn {
  readonly made: CataloguedFigure;
  readonly context: FileContext;
  /** Name of the site. */
  readonly site: string;
  /** One `<svg>` element as Plot draws it, without words of its own (`stripNames`). */
  readonly draw: (plot: PlotOptions) => string;
}

/** @param column of print; none for a file that is seen on screens */
export function writePicture({ made, context, site, draw }: Drawn, column?: ColumnWidth): SvgFile {
  const { slug, figure } = made;
  const plot = { ...figure.plot, width: column ? COLUMNS[column].drawing : FILE_WIDTH };
  const words = {
    title: figure.title,
    alternative: figure.alternative,
    source: stateSource(slug, site, context),
    notice: context.demonstration ? PICTURE_NOTICE : null,
  };
  return writeSvgFile(draw(plot), plot, words, column ? COLUMNS[column] : SCREEN_LOOK);
}
