/** Puts a text on the clipboard; false where the browser does not let a page do that. */
export async function copyText(text: string): Promise<boolean> {
  try {
    // A page that came over an unsafe connection has no clipboard at all.
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
