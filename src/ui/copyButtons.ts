/**
 * Buttons that copy the text of the element they name; hidden until a browser runs this. An address that
 * the build could only write without its host is completed, there and in the files of the same text.
 */
import { copyElement } from './copyElement.ts';
import { saveFile } from './saveFile.ts';

for (const element of document.querySelectorAll<HTMLElement>('[data-incomplete]')) {
  if (element instanceof HTMLAnchorElement) element.addEventListener('click', saveCompleted);
  else element.textContent = complete(element, element.textContent ?? '');
}

function complete({ dataset: { incomplete = '' } }: HTMLElement, text: string): string {
  return text.replaceAll(incomplete, new URL(incomplete, location.href).href);
}

/** Saves what a link leads to, with the whole address in it; where that is not to be had, leaves it to the browser. */
async function saveCompleted(this: HTMLAnchorElement, event: Event): Promise<void> {
  event.preventDefault();
  try {
    const response = await fetch(this.href);
    if (!response.ok) throw new Error(String(response.status));
    const text = complete(this, await response.text());
    saveFile({ name: this.download, type: response.headers.get('content-type') ?? '', text });
  } catch {
    this.removeEventListener('click', saveCompleted);
    this.click();
  }
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
