/** A week repeated into a block, each time with one repetition more in reserve; one week of it without training. */
import { WEEKDAYS } from '../../../src/practice/programme/columns.ts';

/** @param week CSV of one week, days in words first and reserve seventh @param without week that has no lines */
export function blockOf(week: string, weeks: number, without: number | null = null): string {
  const [header, ...lines] = week.trim().split('\n');
  const all = Array.from({ length: weeks }, (_, i) => i).filter((i) => i + 1 !== without);
  return `${[
    header,
    ...all.flatMap((i) =>
      lines.map((line) => {
        const cells = line.split(',');
        const day = WEEKDAYS.findIndex((name) => name.startsWith(cells[0])) + 1;
        const reserve = Math.min(10, Number(cells[6]) + (i % 4));
        return cells
          .with(0, String(7 * i + day))
          .with(6, String(reserve))
          .join(',');
      }),
    ),
  ].join('\n')}\n`;
}
