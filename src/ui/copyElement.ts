/** Copies the text of an element; where the clipboard is closed to pages it is marked, in sight, for the reader's own copying. */
import { copyText } from './copyText.ts';

/** @returns what to tell the reader */
export async function copyElement(id: string): Promise<string> {
  const source = document.getElementById(id);
  if (!source) throw new Error(`nothing to copy from: ${id}`);
  if (await copyText(source.textContent ?? '')) return 'Copied.';
  source.closest('details')?.setAttribute('open', '');
  getSelection()?.selectAllChildren(source);
  return 'This browser does not let a page copy; the text is marked instead.';
}
