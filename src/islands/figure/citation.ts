/** How a figure with a reader's settings is cited: its address, what its files say of it, its references and its frame. */
import type { CataloguedFigure } from '../../figures/catalogue.ts';
import { type Release, toFigureItem, yearOf } from '../../figures/citing/figureItem.ts';
import { estimateHeight } from '../../figures/citing/frameHeight.ts';
import { headlineOf } from '../../figures/citing/headline.ts';
import { type Reference, referTo } from '../../figures/citing/references.ts';
import type { FileContext } from '../../figures/figureFiles.ts';
import type { Settings } from '../../model/settings.ts';
import { writeFrame } from '../../ui/frame.ts';
import { SITE_NAME } from '../../ui/siteName.ts';
import type { FigureSource } from '../analysis/figureSource.ts';
import { markOf, orderSettings, writeCited } from './citedAddress.ts';

interface Cited {
  readonly made: CataloguedFigure;
  readonly source: FigureSource;
  readonly settings: Settings;
  /** Of the page that draws any figure, without query and hash. */
  readonly page: string;
}

/**
 * Whole address under which others see the figure: with the site's settings the site's own page, else one that holds
 * settings, table and what was found.
 */
export function addressOf({ made: { slug }, source, settings, page }: Cited): string {
  if (markOf(settings) === null) return new URL(`../${slug}/`, page).href;
  return page + queryOf({ slug, source, settings });
}

/** @param isOwn of a reader's own table, which no address shows */
export function contextOf(cited: Cited, isOwn: boolean): FileContext {
  const { source, settings } = cited;
  const { dataVersion, demonstration } = source;
  return {
    dataVersion,
    demonstration,
    settings: orderSettings(settings),
    mark: markOf(settings),
    address: isOwn ? null : addressOf(cited),
  };
}

export function referenceOf(cited: Cited, release: Release): Reference {
  const { made, source, settings } = cited;
  return referTo(
    toFigureItem({
      slug: made.slug,
      title: made.figure.title,
      authors: release.authors,
      site: SITE_NAME,
      dataVersion: source.dataVersion,
      mark: markOf(settings),
      year: yearOf(release, source.newestYear),
      address: addressOf(cited),
      demonstration: source.demonstration,
    }),
  );
}

export function frameOf({ made: { slug, figure }, source, settings, page }: Cited): string {
  const address = new URL('embed/', page).href + queryOf({ slug, source, settings });
  return writeFrame({ address, title: figure.title, height: estimateHeight(figure, source.demonstration) });
}

function queryOf({ slug, source, settings }: Pick<Cited, 'source' | 'settings'> & { readonly slug: string }): string {
  const found = headlineOf(slug, source);
  return `${writeCited(settings, { version: source.dataVersion, own: false, found })}#${slug}`;
}
