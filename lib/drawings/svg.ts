/**
 * A thin layer over the DOM for building SVG drawings in millimetres of paper.
 *
 * @module
 */
import { parseHTML } from "linkedom";

const SVG_NAMESPACE = "http://www.w3.org/2000/svg";

/** Attribute values by name; numbers are rounded to a thousandth of a millimetre. */
export type Attributes = Readonly<Record<string, string | number>>;

/** Height of the smallest letters, mm: on A3 their capitals are 2.5 mm high. */
export const SMALLEST = 2.6;

/** A point on the paper, mm from the upper left corner. */
export interface PaperPoint {
  readonly x: number;
  readonly y: number;
}

const { document } = parseHTML("<!DOCTYPE html><html><body></body></html>");

/** Creates one SVG element with its children. */
export function element(
  name: string,
  attributes: Attributes,
  children: readonly (Element | string)[] = [],
): Element {
  const created = document.createElementNS(SVG_NAMESPACE, name) as unknown as Element;
  for (const [key, value] of Object.entries(attributes)) {
    created.setAttribute(key, typeof value === "number" ? paperNumber(value) : value);
  }
  for (const child of children) created.append(child);
  return created;
}

/** Number as text, to a thousandth of a millimetre. */
function paperNumber(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

/** Straight line between two points. */
export function line(from: PaperPoint, to: PaperPoint, attributes: Attributes = {}): Element {
  return element("line", { x1: from.x, y1: from.y, x2: to.x, y2: to.y, ...attributes });
}

/** Open or closed run of straight lines. */
export function polyline(points: readonly PaperPoint[], attributes: Attributes = {}): Element {
  const path = points.map((point) => `${paperNumber(point.x)},${paperNumber(point.y)}`).join(" ");
  return element("polyline", { points: path, fill: "none", ...attributes });
}

/** Circle around a point. */
export function circle(centre: PaperPoint, radius: number, attributes: Attributes = {}): Element {
  return element("circle", { cx: centre.x, cy: centre.y, r: radius, ...attributes });
}

/** Rectangle from its upper left corner. */
export function rectangle(
  corner: PaperPoint,
  size: { readonly width: number; readonly height: number },
  attributes: Attributes = {},
): Element {
  return element("rect", { x: corner.x, y: corner.y, ...size, ...attributes });
}

/** One line of text; `size` is its height in mm. */
export function text(
  at: PaperPoint,
  content: string,
  options: { readonly size?: number; readonly anchor?: "start" | "middle" | "end" } & {
    readonly rotate?: number;
    readonly bold?: boolean;
  } = {},
): Element {
  const attributes: Record<string, string | number> = {
    x: at.x,
    y: at.y,
    "font-size": options.size ?? SMALLEST,
    "text-anchor": options.anchor ?? "start",
    stroke: "none",
    fill: "#111",
  };
  if (options.bold) attributes["font-weight"] = "bold";
  if (options.rotate) {
    attributes.transform = `rotate(${paperNumber(options.rotate)} ${paperNumber(at.x)} ${
      paperNumber(at.y)
    })`;
  }
  return element("text", attributes, [content]);
}

/** Estimated width of a line of text, mm; a letter of the sans-serif fonts takes half its height. */
export function textWidth(content: string, size: number): number {
  return 0.5 * size * content.length;
}

/** One line of text on a white ground, so that lines behind it do not cross the letters. */
export function label(
  at: PaperPoint,
  content: string,
  options: { readonly size?: number; readonly anchor?: "start" | "middle" | "end" } = {},
): Element {
  const { size = SMALLEST, anchor = "start" } = options;
  const width = textWidth(content, size);
  const left = at.x - (anchor === "middle" ? width / 2 : anchor === "end" ? width : 0);
  const ground = rectangle({ x: left - 0.5, y: at.y - size * 0.9 }, {
    width: width + 1,
    height: size * 1.2,
  }, { fill: "#fff", stroke: "none" });
  return element("g", {}, [ground, text(at, content, { size, anchor })]);
}

/** A pipe seen from the side, as a run of straight pieces with a wall on either side. */
export function pipeRun(
  points: readonly PaperPoint[],
  width: number,
  colours: { readonly fill: string; readonly stroke: string },
): Element[] {
  const wide = Math.max(width, 0.8);
  const joined = { "stroke-linejoin": "round" };
  return [
    polyline(points, { stroke: colours.stroke, "stroke-width": wide, ...joined }),
    polyline(points, { stroke: colours.fill, "stroke-width": wide - 0.5, ...joined }),
  ];
}
