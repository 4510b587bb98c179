/** Layers of the tank through a week: hours on x, height on y, temperature as colour. */
import type { Place } from './axes.ts';
import { heatStep } from './colour-steps.ts';
import type { ChartContext } from './context.ts';
import { HEAT_COUNT, heatColour } from './palette.ts';

const HOURS = 168;

/** One path a step of the runs of equal colour in each hour; one unit is an hour and a node, bottom first. */
export function layerPaths(nodes: number, level: (hour: number, node: number) => number, count: number): string[] {
  const paths = Array.from({ length: count }, () => '');
  for (let hour = 0; hour < HOURS; hour++) {
    let start = 0;
    for (let node = 1; node <= nodes; node++) {
      const current = level(hour, start);
      if (node < nodes && level(hour, node) === current) continue;
      paths[current] += `M${hour} ${nodes - node}h1v${node - start}h-1z`;
      start = node;
    }
  }
  return paths;
}

/** Layers of one design in a panel. @param from - first day of the week [d] */
export function layerMarks(
  { results, units, palette }: ChartContext,
  index: number,
  from: number,
  place: Place,
): string {
  const { tankNodes } = results[index]!;
  const nodes = tankNodes.length / 8760;
  const step = heatStep(units);
  const paths = layerPaths(nodes, (hour, node) => step(tankNodes[(24 * from + hour) * nodes + node]!), HEAT_COUNT);
  const marks = paths.map((path, at) => (path === '' ? '' : `<path fill="${heatColour(palette, at)}" d="${path}"/>`));
  return `<g shape-rendering="crispEdges" transform="translate(${place.left} ${place.top}) scale(${place.width / HOURS} ${place.height / nodes})">${marks.join('')}</g>`;
}
