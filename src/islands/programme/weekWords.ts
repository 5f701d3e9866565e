/** Weeks as they are named: runs of them together. */

/** “Week 2”, “Weeks 1 to 4”, “Weeks 1, 2 and 5”; empty for none. */
export function writeWeeks(weeks: readonly number[]): string {
  if (weeks.length < 2) return weeks.map((week) => `Week ${week}`).join();
  const isRun = weeks.every((week, i) => i === 0 || week === weeks[i - 1] + 1);
  if (isRun && weeks.length > 2) return `Weeks ${weeks[0]} to ${weeks.at(-1)}`;
  return `Weeks ${weeks.slice(0, -1).join(', ')} and ${weeks.at(-1)}`;
}
