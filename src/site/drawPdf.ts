/**
 * A figure's file for print as PDF: its words as text, in a face that is embedded. pdfmake draws SVG and is maintained;
 * what it cannot do is paint a letter's outline below its fill, so the outlines that keep letters off lines are left out.
 */
import pdfmake from 'pdfmake';
import type { SvgFile } from '../figures/svgFile.ts';
import { FONT_FILES } from './drawFigure.ts';

const FACE = 'DejaVu';
const POINTS_PER_MM = 72 / 25.4;

pdfmake.setFonts({ [FACE]: { normal: FONT_FILES.regular, bold: FONT_FILES.bold } });
// Nothing is fetched, and no file is read but the two faces.
pdfmake.setUrlAccessPolicy(() => false);
pdfmake.setLocalAccessPolicy((path: string) => Object.values(FONT_FILES).includes(path));

export interface PdfWords {
  readonly title: string;
  readonly author: string;
  /** What the picture shows. */
  readonly subject: string;
  /** Day that it is said to be of, YYYY-MM-DD: never that of the build, which would make two builds differ. */
  readonly date: string;
}

/**
 * @param svg a file for print (svgFile.ts)
 * @param paperWidth millimetres
 */
export async function drawPdf(
  { text, width, height }: SvgFile,
  paperWidth: number,
  { title, author, subject, date }: PdfWords,
): Promise<Uint8Array<ArrayBuffer>> {
  const points = paperWidth * POINTS_PER_MM;
  const document = {
    pageSize: { width: points, height: (points * height) / width },
    pageMargins: 0,
    info: { title, author, subject, creationDate: new Date(`${date}T00:00:00Z`) },
    defaultStyle: { font: FACE },
    content: [{ svg: forPdf(text), width: points }],
  };
  return new Uint8Array(await pdfmake.createPdf(document).getBuffer());
}

/** The file's picture with one face, and without outlines of letters. */
function forPdf(svg: string): string {
  return svg
    .replace(/^<\?xml[^>]*>\s*/u, '')
    .replace(/<[^>]*>/gu, (tag) => tag.replace(/font-family="[^"]*"/gu, `font-family="${FACE}"`))
    .replace(/<g\b[^>]*paint-order="stroke"[^>]*>/gu, (group) => group.replace(/ stroke(?:-[a-z]+)?="[^"]*"/gu, ''));
}
