/** Coloured blocks drawn as one path a colour: a tenth of the size of single rectangles. @module */
import type * as Plot from "@observablehq/plot";

/** One block in axis values. */
export interface Block {
  /** left and right on the horizontal axis */
  readonly left: number;
  readonly right: number;
  /** the two ends on the vertical axis */
  readonly bottom: number;
  readonly top: number;
  readonly colour: string;
}

const SVG_NAMESPACE = "http://www.w3.org/2000/svg";

/**
 * A mark of coloured blocks. The plot must give the domains of both axes itself. Later colours are
 * drawn over earlier ones; every block is drawn half a pixel larger, so that no seam shows.
 */
export function blocksMark(blocks: readonly Block[]): Plot.RenderFunction {
  return (_index, scales, _values, _dimensions, context) => {
    const x = placeOn(scales, "x");
    const y = placeOn(scales, "y");
    const paths = new Map<string, string[]>();
    for (const block of blocks) {
      const found = paths.get(block.colour) ?? [];
      found.push(blockPath(block, x, y));
      paths.set(block.colour, found);
    }
    const group = context.document.createElementNS(SVG_NAMESPACE, "g");
    group.setAttribute("shape-rendering", "crispEdges");
    for (const [colour, parts] of paths) {
      const path = context.document.createElementNS(SVG_NAMESPACE, "path");
      path.setAttribute("fill", colour);
      path.setAttribute("d", parts.join(""));
      group.appendChild(path);
    }
    return group as unknown as SVGElement;
  };
}

/** Where a value lies: through the transform of the scale, as Plot does it for its own marks. */
function placeOn(
  scales: Plot.ScaleFunctions,
  axis: "x" | "y",
): (value: number) => number {
  const place = scales[axis] as unknown as (value: number) => number;
  const transform = scales.scales?.[axis]?.transform as ((value: number) => number) | undefined;
  return transform === undefined ? place : (value) => place(transform(value));
}

function blockPath(
  block: Block,
  x: (value: number) => number,
  y: (value: number) => number,
): string {
  const [left, right] = [x(block.left), x(block.right)].map(tenths);
  const [low, high] = [y(block.bottom), y(block.top)].sort((a, b) => a - b).map(tenths);
  const width = tenths(right! - left! + 0.5);
  const height = tenths(high! - low! + 0.5);
  return `M${left} ${low}h${width}v${height}h${-width}z`;
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}
