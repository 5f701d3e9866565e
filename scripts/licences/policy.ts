/** Which licences a dependency may have: to build the site, and to reach a reader's browser. */

/** May be sent to browsers: asks for no more than that its notice goes along, which `licences.txt` does. */
export const SHIPPED_LICENCES: ReadonlySet<string> = new Set([
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'BSL-1.0',
  'CC0-1.0',
  'ISC',
  'MIT',
  'Unlicense',
  // Of the two fonts, which are sent as they come.
  'OFL-1.1',
]);

/** May be used to build and test: those, and such as bind only who changes the package itself. */
export const ALLOWED_LICENCES: ReadonlySet<string> = new Set([
  ...SHIPPED_LICENCES,
  'CC-BY-4.0',
  'MPL-2.0',
  'Python-2.0',
  'Zlib',
]);

export interface Exception {
  readonly name: RegExp;
  /** As the package states it: a changed licence ends the exception. */
  readonly licence: RegExp;
  readonly reason: string;
}

/** Packages with another licence, each with the reason why it may be used. */
export const EXCEPTIONS: readonly Exception[] = [
  {
    name: /^citeproc$/u,
    licence: /^CPAL-1\.0 OR AGPL-1\.0$/u,
    reason:
      'writes references in a style in tests only, which hold the site’s own writer to it (src/figures/citing/references.ts); nothing of it reaches a page. The styles that come with @citation-js/plugin-csl are under CC BY-SA 3.0 and stay at home too',
  },
  {
    name: /^dejavu-fonts-ttf$/u,
    licence: /^SEE LICENSE IN README\.md AND LICENSE$/u,
    reason:
      'fonts under the permissive licence of Bitstream Vera, which has no name on the usual list; they write the words of PNG and PDF files at build time (src/site/drawFigure.ts, src/site/drawPdf.ts): pixels of them are published, and in PDF the letters that a file uses, as the licence lets documents do',
  },
  {
    name: /^png-js$/u,
    licence: /^none stated$/u,
    reason:
      'reads PNG pictures for pdfmake, at build time only; its package states no licence, but holds the text of MIT. The figures have no such picture',
  },
  {
    name: /^@img\/sharp-/u,
    licence: /^(?:Apache-2\.0 AND )?LGPL-3\.0-or-later(?: AND MIT)?$/u,
    reason:
      'image library that Astro asks for where it can be had, unchanged; this site has no picture that it would work on',
  },
];

/** Whether an SPDX expression can be met with licences of the set: one of an OR, all of an AND. */
export function isMetBy(expression: string, licences: ReadonlySet<string>): boolean {
  const plain = expression.replace(/^\(([^()]*)\)$/u, '$1');
  return plain.split(' OR ').some((choice) => choice.split(' AND ').every((one) => licences.has(one)));
}

/** Why a package may not be used; null where it may. */
export function refuseLicence(name: string, licence: string): string | null {
  if (isMetBy(licence, ALLOWED_LICENCES)) return null;
  if (EXCEPTIONS.some((exception) => exception.name.test(name) && exception.licence.test(licence))) return null;
  return `${name} has licence “${licence}”, which is neither allowed nor an exception: see scripts/licences/policy.ts`;
}
