/** Downloads of a figure besides its picture; the same at the build and in a browser. */
import { DEMONSTRATION_NOTE } from '../evidence/demonstration.ts';
import type { Settings } from '../model/settings.ts';
import type { CataloguedFigure } from './catalogue.ts';
import { writePlotted } from './plotted.ts';

/** Said inside every picture of invented studies. */
export const PICTURE_NOTICE = 'Demonstration: the studies behind this figure are invented.';

export interface FileContext {
  /** First characters of the table's SHA-256. */
  readonly dataVersion: string;
  readonly demonstration: boolean;
  readonly settings: Settings;
  /** Of the figure's page. */
  readonly address: string;
}

/** Name of a figure's files without their ending: which figure, of which data. */
export function nameFile(slug: string, { dataVersion, demonstration }: FileContext): string {
  return [...(demonstration ? ['demonstration'] : []), slug, dataVersion].join('-');
}

/** The plotted numbers. */
export function writeFigureCsv({ figure }: CataloguedFigure, { demonstration }: FileContext): string {
  return writePlotted(figure.plot, demonstration ? DEMONSTRATION_NOTE : null);
}

/** The figure's words and what of the analysis it is drawn from. */
export function writeFigureJson(
  { slug, name, figure, shown, excluded, part }: CataloguedFigure,
  context: FileContext,
): string {
  const { title, caption, alternative, table } = figure;
  const { address, dataVersion, demonstration, settings } = context;
  const content = {
    ...(demonstration ? { demonstration: 'the studies behind these numbers are invented' } : {}),
    slug,
    name,
    address,
    dataVersion,
    title,
    caption,
    alternative,
    shown,
    excluded,
    settings,
    table,
    analysis: part,
  };
  return `${JSON.stringify(content, null, 2)}\n`;
}
