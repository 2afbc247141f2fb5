import { scaleBand, scaleLinear } from "d3-scale";

export interface Bar {
  readonly name: string;
  readonly value: number;
}

const size = { width: 640, row: 26, left: 240, right: 60 } as const;

/**
 * Bars of whole numbers, one under the other, as SVG. The table behind it says the same. The bars' colour differs by 3
 * to 1 from light and from dark ground (WCAG 2.2, 1.4.11), and words are as the page's.
 */
export function barChart(title: string, bars: readonly Bar[]): string {
  const height = bars.length * size.row;
  const x = scaleLinear(
    [0, Math.max(1, ...bars.map(({ value }) => value))],
    [0, size.width - size.left - size.right],
  );
  const y = scaleBand(
    bars.map((_, i) => i),
    [0, height],
  ).padding(0.25);
  const drawn = bars.map(({ name, value }, i) => {
    const top = y(i) ?? 0;
    const base = top + y.bandwidth() / 2 + 4;
    return `<text x="${size.left - 8}" y="${base}" text-anchor="end">${escaped(shortened(name))}</text><rect x="${size.left}" y="${top}" width="${x(value)}" height="${y.bandwidth()}" fill="#4a7fb5"/><text x="${size.left + x(value) + 6}" y="${base}">${value}</text>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 ${size.width} ${height}" width="${size.width}" height="${height}" font-family="sans-serif" font-size="12" fill="currentColor"><title>${escaped(title)}</title>${drawn.join("")}</svg>`;
}

function shortened(name: string): string {
  const signs = Array.from(name);
  return signs.length <= 34 ? name : `${signs.slice(0, 33).join("")}…`;
}

function escaped(text: string): string {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}
