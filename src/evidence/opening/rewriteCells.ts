/** Cells of a CSV text exchanged in place: every other character stays as it was written, marks and line breaks too. */

/** Gives a cell's new text, or null to leave it. @param row 0 being the header; lines without anything are no rows */
export type Rewrite = (cell: string, row: number, column: number) => string | null;

/** @param text whose quotation marks are closed, as reading has shown */
export function rewriteCells(text: string, delimiter: string, rewrite: Rewrite): string {
  const pieces: string[] = [];
  let copied = 0;
  let at = text.startsWith('\ufeff') ? 1 : 0;
  let row = 0;
  while (at < text.length) {
    let column = 0;
    let isEmpty = true;
    for (;;) {
      const end = findCellEnd(text, at, delimiter);
      const raw = text.slice(at, end);
      const isLast = text[end] !== delimiter;
      isEmpty &&= isLast && column === 0 && raw.trim() === '';
      const fresh = isEmpty ? null : rewrite(readRaw(raw), row, column);
      if (fresh !== null) {
        pieces.push(text.slice(copied, at), writeRaw(fresh, delimiter));
        copied = end;
      }
      at = end + 1;
      column++;
      if (isLast) break;
    }
    if (text[at - 1] === '\r' && text[at] === '\n') at++;
    if (!isEmpty) row++;
  }
  pieces.push(text.slice(copied));
  return pieces.join('');
}

/** Place of the delimiter, line break or end after the cell that begins at a place. */
function findCellEnd(text: string, start: number, delimiter: string): number {
  let at = start;
  if (text[at] === '"') {
    do at = text.indexOf('"', at + 1) + 1;
    while (at > 0 && text[at] === '"');
    if (at === 0) return text.length;
  }
  while (at < text.length && text[at] !== delimiter && text[at] !== '\n' && text[at] !== '\r') at++;
  return at;
}

function readRaw(raw: string): string {
  return raw.startsWith('"') ? raw.trimEnd().slice(1, -1).replaceAll('""', '"') : raw;
}

function writeRaw(cell: string, delimiter: string): string {
  return cell.includes(delimiter) || /["\r\n]/u.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
