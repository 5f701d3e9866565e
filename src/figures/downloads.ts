/** The files of a figure, in their order: one name, ending and type for each, on the site's pages and on those that a browser draws. */

/** `of` is what files stand together under. */
export const FIGURE_FILES = [
  { kind: 'svg', of: 'Picture', ending: '.svg', type: 'image/svg+xml', label: 'SVG' },
  { kind: 'png', of: 'Picture', ending: '@1x.png', type: 'image/png', label: 'PNG' },
  { kind: 'png2x', of: 'Picture', ending: '@2x.png', type: 'image/png', label: 'PNG, twice the size' },
  { kind: 'svg85', of: 'For print', ending: '-85mm.svg', type: 'image/svg+xml', label: 'SVG, 85 mm' },
  { kind: 'pdf85', of: 'For print', ending: '-85mm.pdf', type: 'application/pdf', label: 'PDF, 85 mm' },
  { kind: 'svg175', of: 'For print', ending: '-175mm.svg', type: 'image/svg+xml', label: 'SVG, 175 mm' },
  { kind: 'pdf175', of: 'For print', ending: '-175mm.pdf', type: 'application/pdf', label: 'PDF, 175 mm' },
  { kind: 'csv', of: 'Numbers', ending: '.csv', type: 'text/csv', label: 'CSV of the plotted numbers' },
  { kind: 'json', of: 'Numbers', ending: '.json', type: 'application/json', label: 'JSON of the analysis' },
  { kind: 'bib', of: 'Reference', ending: '.bib', type: 'application/x-bibtex', label: 'BibTeX' },
  { kind: 'ris', of: 'Reference', ending: '.ris', type: 'application/x-research-info-systems', label: 'RIS' },
  {
    kind: 'csl',
    of: 'Reference',
    ending: '.csl.json',
    type: 'application/vnd.citationstyles.csl+json',
    label: 'CSL-JSON',
  },
] as const;

export type FigureFile = (typeof FIGURE_FILES)[number];
export type FileKind = FigureFile['kind'];

/** Files by what they stand together under, for the page that has those kinds. */
export function groupFiles<File extends FigureFile>(
  files: readonly File[],
): readonly (readonly [of: string, files: readonly File[]])[] {
  return [...new Set(files.map(({ of }) => of))].map((of) => [of, files.filter((file) => file.of === of)] as const);
}
