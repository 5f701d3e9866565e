/** Which table a text is: its hash, or, on a page where the browser cannot hash, a name that no other text ever gets. */

/** The start of a name that is no hash. */
export const UNHASHED = 'unhashed-';
/** Bytes of chance in such a name: two alike would need some 10^19 of them. */
const CHANCE = 16;

/** What tells a text from every other, and its bytes as UTF-8. */
export async function identify(text: string): Promise<{ readonly version: string; readonly bytes: number }> {
  const bytes = new TextEncoder().encode(text);
  return { version: (await hash(bytes)) ?? UNHASHED + inHex(randomBytes()), bytes: bytes.length };
}

/** SHA-256, hexadecimal; null where the browser hashes nothing: on pages that did not come over a safe connection. */
export async function hash(bytes: BufferSource): Promise<string | null> {
  if (!globalThis.crypto?.subtle) return null;
  return inHex(new Uint8Array(await crypto.subtle.digest('SHA-256', bytes)));
}

function randomBytes(): Uint8Array {
  return crypto.getRandomValues(new Uint8Array(CHANCE));
}

function inHex(bytes: Uint8Array): string {
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
