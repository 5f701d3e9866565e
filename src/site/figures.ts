/** Every figure of the site's analysis with its addresses, files and reference, worked out once for all pages. */
import { createHash } from 'node:crypto';
import { type CataloguedFigure, listFigures } from '../figures/catalogue.ts';
import { newestYearOf, toFigureItem, yearOf } from '../figures/citing/figureItem.ts';
import { type Reference, referTo } from '../figures/citing/references.ts';
import { FIGURE_FILES, type FileKind } from '../figures/downloads.ts';
import { type FileContext, nameFile, PICTURE_NOTICE, writeFigureCsv, writeFigureJson } from '../figures/figureFiles.ts';
import { writePicture } from '../figures/pictureFile.ts';
import type { ColumnWidth } from '../figures/printLook.ts';
import type { SvgFile } from '../figures/svgFile.ts';
import { drawBare, drawPng } from './drawFigure.ts';
import { drawPdf } from './drawPdf.ts';
import { release } from './release.ts';
import { pathTo, site } from './site.ts';
import { regions } from './studies.ts';

const { analysis, sweep, arms, dataVersion, demonstration } = site;

export const catalogue = listFigures({ analysis, map: regions, sweep });

/** Year of the newest study in the table. */
export const newestYear = newestYearOf(arms);

/** A page's address, whole where the build was told where the site will stand. */
export function addressTo(page: string): string {
  const path = pathTo(page);
  return import.meta.env.SITE ? new URL(path, import.meta.env.SITE).href : path;
}

/** Texts are in UTF-8, and say so where a host passes the type on. */
const CHARSET = '; charset=utf-8';
const WITH_CHARSET: readonly FileKind[] = ['csv', 'bib', 'ris'];

function fileOfKind(kind: FileKind) {
  const [{ ending, type }] = FIGURE_FILES.filter((file) => file.kind === kind);
  return { ending, type: WITH_CHARSET.includes(kind) ? type + CHARSET : type };
}

export function pageOf(slug: string): string {
  return `figures/${slug}/`;
}

export function fileName(slug: string, kind: FileKind): string {
  return `${nameFile(slug, contextOf(slug))}${fileOfKind(kind).ending}`;
}

/** Path inside the site of a figure's file. */
export function fileOf(slug: string, kind: FileKind): string {
  return `${pageOf(slug)}${fileName(slug, kind)}`;
}

/** A figure by its slug; throws where there is none. */
export function figureOf(slug: string): CataloguedFigure {
  const found = catalogue.figures.find((one) => one.slug === slug);
  if (!found)
    throw new Error(`invalid slug; the figures are ${catalogue.figures.map((one) => one.slug).join(', ')}: ${slug}`);
  return found;
}

/** The figures before and after one in the catalogue; undefined at its ends. */
export function neighboursOf(slug: string) {
  const place = catalogue.figures.indexOf(figureOf(slug));
  return { before: catalogue.figures[place - 1], after: catalogue.figures[place + 1] };
}

/** Rows of the table in a figure's fit; null for a figure of no one fit. */
export function includedIn({ excluded }: CataloguedFigure): number | null {
  return excluded ? arms.length - excluded.length : null;
}

/** Pixels of a figure's PNG. */
export function pngSizeOf(slug: string, scale: 1 | 2): { readonly width: number; readonly height: number } {
  const { width, height } = svgOf(slug);
  return { width: Math.ceil(scale * width), height: Math.ceil(scale * height) };
}

export const svgOf = once((slug): SvgFile => pictureOf(slug));

/** @param column of print; none for a file that is seen on screens */
function pictureOf(slug: string, column?: ColumnWidth): SvgFile {
  const context = { ...contextOf(slug), ...(import.meta.env.SITE ? {} : { address: '' }) };
  return writePicture({ made: figureOf(slug), context, site: site.name, draw: drawBare }, column);
}

function writePdf(slug: string, width: ColumnWidth): Promise<Uint8Array<ArrayBuffer>> {
  const { title, alternative } = figureOf(slug).figure;
  const subject = [...(demonstration ? [PICTURE_NOTICE] : []), alternative].join(' ');
  const words = { title, author: release.authors, subject, date: release.date };
  return drawPdf(pictureOf(slug, width), width, words);
}

export const referenceOf = once(
  (slug): Reference =>
    referTo(
      toFigureItem({
        slug,
        title: figureOf(slug).figure.title,
        authors: release.authors,
        site: site.name,
        dataVersion,
        mark: null,
        year: yearOf(release, newestYear),
        address: addressTo(pageOf(slug)),
        demonstration,
      }),
    ),
);

interface WrittenFile {
  readonly body: string | Uint8Array<ArrayBuffer>;
  readonly type: string;
}

const written = new Map<string, Promise<WrittenFile>>();

export function writeFile(slug: string, kind: FileKind): Promise<WrittenFile> {
  const name = fileName(slug, kind);
  const file = written.get(name) ?? makeFile(slug, kind);
  written.set(name, file);
  return file;
}

async function makeFile(slug: string, kind: FileKind): Promise<WrittenFile> {
  const makers: Readonly<Record<FileKind, () => WrittenFile['body'] | Promise<WrittenFile['body']>>> = {
    svg: () => svgOf(slug).text,
    png: () => new Uint8Array(drawPng(svgOf(slug).text, 1)),
    png2x: () => new Uint8Array(drawPng(svgOf(slug).text, 2)),
    svg85: () => pictureOf(slug, 85).text,
    pdf85: () => writePdf(slug, 85),
    svg175: () => pictureOf(slug, 175).text,
    pdf175: () => writePdf(slug, 175),
    csv: () => writeFigureCsv(figureOf(slug), contextOf(slug)),
    json: () => writeFigureJson(figureOf(slug), contextOf(slug)),
    bib: () => referenceOf(slug).bibtex,
    ris: () => referenceOf(slug).ris,
    csl: () => referenceOf(slug).cslJson,
  };
  return { body: await makers[kind](), type: fileOfKind(kind).type };
}

/** Name and SHA-256 of a figure's file. */
export async function listFile(slug: string, kind: FileKind) {
  const { body, type } = await writeFile(slug, kind);
  return { address: addressTo(fileOf(slug, kind)), type, sha256: createHash('sha256').update(body).digest('hex') };
}

function contextOf(slug: string): FileContext {
  return { dataVersion, demonstration, settings: analysis.settings, mark: null, address: addressTo(pageOf(slug)) };
}

function once<Made>(make: (slug: string) => Made): (slug: string) => Made {
  const known = new Map<string, Made>();
  return (slug) => {
    const made = known.get(slug) ?? make(slug);
    known.set(slug, made);
    return made;
  };
}
