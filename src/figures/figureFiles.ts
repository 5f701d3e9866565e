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
  /** What tells the settings from others; null for the site's own. */
  readonly mark: string | null;
  /** Of the figure's page; null for a figure of a reader's own table, which no page shows to others. */
  readonly address: string | null;
}

/** Name of a figure's files without their ending: which figure, of which data, with which settings. */
export function nameFile(slug: string, { dataVersion, demonstration, mark, address }: FileContext): string {
  return [
    ...(address === null ? ['own-table'] : []),
    ...(demonstration ? ['demonstration'] : []),
    slug,
    dataVersion,
    ...(mark === null ? [] : [mark]),
  ].join('-');
}

/** The line in a picture that says where it comes from. */
export function stateSource(slug: string, site: string, { dataVersion, mark, address }: FileContext): string {
  const versions = [`data version ${dataVersion}`, ...(mark === null ? [] : [`settings ${mark}`])];
  return address === null
    ? [`Drawn with ${site} from a table of the author’s own`, ...versions].join(', ')
    : [site, `figure ${slug}`, ...versions, ...(address === '' ? [] : [address])].join(', ');
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
  const { address, dataVersion, mark, demonstration, settings } = context;
  const content = {
    ...(demonstration ? { demonstration: 'the studies behind these numbers are invented' } : {}),
    slug,
    name,
    ...(address === null ? { table: 'the author’s own, not the site’s' } : { address }),
    dataVersion,
    ...(mark === null ? {} : { settingsMark: mark }),
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
