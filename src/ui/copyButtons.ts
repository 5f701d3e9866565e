/**
 * Buttons that copy the text of the element they name; hidden until a browser runs this. An address that
 * the build could only write without its host is completed first.
 */
import { copyText } from './copyText.ts';

for (const text of document.querySelectorAll<HTMLElement>('[data-incomplete]')) {
  const path = text.dataset.incomplete ?? '';
  text.textContent = (text.textContent ?? '').replaceAll(path, new URL(path, location.href).href);
}
const buttons = document.querySelectorAll<HTMLButtonElement>('button[data-copy]');
for (const button of buttons) {
  button.hidden = false;
  button.addEventListener('click', () => void copy(button));
}

async function copy(button: HTMLButtonElement): Promise<void> {
  const source = document.getElementById(button.dataset.copy ?? '');
  const status = document.getElementById('copy-status');
  if (!source || !status) throw new Error(`nothing to copy from: ${button.dataset.copy}`);
  if (await copyText(source.textContent ?? '')) {
    status.textContent = 'Copied.';
    return;
  }
  // Where the clipboard is closed to pages, the text is marked, in sight, for the reader's own copying.
  source.closest('details')?.setAttribute('open', '');
  getSelection()?.selectAllChildren(source);
  status.textContent = 'This browser does not let a page copy; the text is marked instead.';
}
