/** What browser tests of the programme page read of it, and how its lines are written by keys. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** Pages of a PDF. */
export const countPages = (pdf: Buffer) => [...pdf.toString('latin1').matchAll(/\/Type\s*\/Page\b(?!s)/gu)].length;
export const textOf = (page: Page, selector: string) => page.locator(selector).innerText();
/** Id of what has the focus. */
export const focused = (page: Page) => page.evaluate('document.activeElement.id') as Promise<string>;
/** Lines of a version, by its name. */
export const linesOf = (page: Page, name: string) => page.locator(`section[aria-label="${name}"] .lines > li`);

/** Writes a line whose exercise has the focus: the first name that is offered, then a cell after the other. */
export async function writeLine(page: Page, exercise: string, cells: readonly string[]): Promise<void> {
  const { keyboard } = page;
  await keyboard.type(exercise);
  await expect.poll(() => page.locator('[role=option]').count()).toBeGreaterThan(0);
  await keyboard.press('ArrowDown');
  await keyboard.press('Enter');
  for (const cell of cells) {
    await keyboard.press('Tab');
    await keyboard.type(cell);
  }
}
