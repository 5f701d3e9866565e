/** A drawn figure made the same on every machine: Plot names clip paths by a counter, and last bits differ. */
export function settleSvg(svg: string): string {
  return svg
    .replaceAll(/plot-clip-\d+/gu, 'plot-clip')
    .replaceAll(/-?\d+\.\d{4,}/gu, (number) => String(Number(Number(number).toFixed(3))));
}
