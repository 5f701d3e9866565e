/** What stands before a line without being part of it: bullets, numbers of a list, letters of a superset. */

export interface Unmarked {
  readonly text: string;
  /** “A1” where the line is part of a superset; null else. */
  readonly superset: string | null;
}

const BULLET = /^(?:[-–—•*·▪◦>]\s+|\(?\d{1,2}[.)]\s+(?=\p{L}))/u;
/** With a sign after it; or letter and digit alone, but for D, which may be a day. */
const SUPERSET = /^\(?([A-H]\d?)[.):]\s*(?=\S)|^([A-CE-H]\d)\s+(?=\p{L})/u;

export function takeMarks(written: string): Unmarked {
  const text = written.trim().replace(BULLET, '').trim();
  const superset = SUPERSET.exec(text);
  if (!superset) return { text, superset: null };
  return { text: text.slice(superset[0].length), superset: superset[1] ?? superset[2] };
}
