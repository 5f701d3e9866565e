/** The address of what a DOI names. */
import { isDoi, plainDoi } from '../evidence/doi.ts';

/** null where the text has not the form of a DOI: such a text is shown, never linked. */
export function linkToDoi(text: string): string | null {
  const doi = plainDoi(text);
  return isDoi(doi) ? `https://doi.org/${doi.split('/').map(encodeURIComponent).join('/')}` : null;
}
