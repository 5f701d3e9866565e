/** Digital object identifiers: their form, what people write before them, and a warning for others. */
import type { Problem } from './problem.ts';
import type { Study } from './schema.ts';

/** Prefix of a registrant, a slash and a name without spaces (form recommended by Crossref, 2015). */
const DOI_FORM = /^10\.\d{4,9}\/\S+$/u;
/** The address of a resolver, or the word, as papers and reference managers put it before a DOI. */
const BEFORE_DOI = /^(?:https?:\/\/)?(?:(?:dx\.|www\.)?doi\.org\/|doi\s*:?\s*)/iu;

/** Whether a text has the form of a DOI, “10.1000/example”. */
export function isDoi(text: string): boolean {
  return DOI_FORM.test(text);
}

/** The text without white space around it and without an address or “doi:” before it; may still be no DOI. */
export function plainDoi(text: string): string {
  return text.trim().replace(BEFORE_DOI, '');
}

/** Warnings for the DOIs of `studies.csv` that do not have the form of one. */
export function findUnusualDois(studies: readonly Study[], file: string): Problem[] {
  return studies.flatMap(({ doi, line }): Problem[] => {
    if (doi === null || isDoi(doi)) return [];
    return [
      {
        kind: 'unusual',
        file,
        line,
        column: 'doi',
        value: doi,
        expected: '10., four to nine digits, a slash and a name without spaces, as in 10.1000/example',
        remedy: isDoi(plainDoi(doi))
          ? `Leave out what stands before ${plainDoi(doi)}.`
          : 'Copy it from the paper; until then it is shown without a link.',
      },
    ];
  });
}

/** The address of what a DOI names; null where the text has not the form of one: such a text is shown, never linked. */
export function linkToDoi(text: string): string | null {
  const doi = plainDoi(text);
  return isDoi(doi) ? `https://doi.org/${doi.split('/').map(encodeURIComponent).join('/')}` : null;
}
