/**
 * Buttons that copy the text of the element they name; hidden until a browser runs this. An address that
 * the build could only write without its host is completed first.
 */
import { copyElement } from './copyElement.ts';

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
  const status = document.getElementById('copy-status');
  if (!status) throw new Error(`nowhere to say what was copied: ${button.dataset.copy}`);
  status.textContent = await copyElement(button.dataset.copy ?? '');
}
