/** Plots put together into one SVG picture. @module */
import * as Plot from "@observablehq/plot";
import { parseHTML } from "linkedom";
import { escapeMarkup } from "./escape.ts";
import { pictureWidth } from "./layout.ts";
import { readersAxes } from "./readers_axes.ts";

/** One entry of a legend. */
export interface LegendEntry {
  /** name shown */
  readonly label: string;
  /** colour of the line or key */
  readonly colour: string;
  /** "area" draws a swatch, "line" a stroke, "dash" a broken stroke; default "area" */
  readonly sign?: "area" | "line" | "dash";
}

/** A finished picture. */
export interface Picture {
  /** SVG source with its namespace */
  readonly svg: string;
  /** px */
  readonly width: number;
  readonly height: number;
}

const LEGEND_LINE = 20;
// px a letter takes on average in the 12 px system font: a safe estimate for legend and margins
const LETTER = 6.5;
/** px that a line of words takes. */
export function wordsWidth(words: string): number {
  return words.length * LETTER;
}

/** px between the end of a name and the picture: tick and gap. */
const BESIDE_NAME = 14;

const { document } = parseHTML("<!DOCTYPE html><html><body></body></html>");

/** px around a plot, and its height, where a chart gives none. */
export const DEFAULTS = {
  height: 300,
  marginLeft: 62,
  marginBottom: 44,
  marginTop: 26,
  marginRight: 24,
} as const;

/**
 * px on the left that the names of rows need, or those of panels whose names stand there as words; no
 * more than half the picture.
 */
function roomForNames({ y, fy }: Plot.PlotOptions, width: number): number {
  const scales = [y?.axis === null ? undefined : y, fy?.axis === null ? fy : undefined];
  const names = scales.flatMap((scale) => [...(scale?.domain as Iterable<unknown> ?? [])])
    .filter((name) => typeof name === "string");
  const longest = Math.max(0, ...names.map(wordsWidth));
  return longest === 0 ? 0 : Math.min(width / 2, longest + BESIDE_NAME);
}

/** Draws one plot in the reader's units; what is not given takes the house defaults. */
export function drawPlot(given: Plot.PlotOptions): Picture {
  const options = readersAxes(given);
  const width = options.width ?? pictureWidth();
  const marginLeft = options.marginLeft ?? DEFAULTS.marginLeft;
  const plot = Plot.plot({
    ...DEFAULTS,
    width,
    ...options,
    marginLeft: Math.max(marginLeft, roomForNames(options, width)),
    ...(options.y?.domain === undefined ? { y: { nice: true, ...options.y } } : {}),
    style: { background: "white", fontSize: "12px", ...(options.style as object | undefined) },
    document: document as unknown as Document,
  });
  plot.querySelector("style")?.remove();
  return {
    svg: shorten(plot.outerHTML),
    width: Number(plot.getAttribute("width")),
    height: Number(plot.getAttribute("height")),
  };
}

/**
 * Cuts coordinates to hundredths of a pixel (half the size, same picture) and writes thousands as
 * the tables do: none for four digits, a narrow space from five on.
 */
function shorten(svg: string): string {
  return svg.replace(/<[^>]*>/g, roundCoordinates)
    .replace(/>(−?\d),(\d{3})</g, ">$1$2<")
    .replace(/>(−?\d{2,3}),(\d{3})</g, ">$1\u202f$2<");
}

/** Only within tags: the numbers a reader sees stay as they are. */
function roundCoordinates(tag: string): string {
  return tag.replace(/-?\d+\.\d{3,}/g, (number) => String(Math.round(Number(number) * 100) / 100));
}

/** Sets plots below each other under one legend. */
export function drawPicture(
  plots: readonly Plot.PlotOptions[],
  legend: readonly LegendEntry[] = [],
): Picture {
  const parts = plots.map(drawPlot);
  const width = Math.max(...parts.map((part) => part.width));
  const key = drawLegend(legend, width);
  let height = key.height;
  const placed = parts.map((part) => {
    const svg = part.svg.replace("<svg ", `<svg x="0" y="${height}" `);
    height += part.height;
    return svg;
  });
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" ` +
    `viewBox="0 0 ${width} ${height}" font-family="system-ui, sans-serif" font-size="12">` +
    `<style>text,tspan{white-space:pre}</style>` +
    `<rect width="100%" height="100%" fill="white"/>${key.svg}${placed.join("")}</svg>`;
  return { svg, width, height };
}

/** The legend as a group of signs and words, wrapped to the width. */
function drawLegend(
  entries: readonly LegendEntry[],
  width: number,
): { readonly svg: string; readonly height: number } {
  if (entries.length === 0) return { svg: "", height: 0 };
  let x = 12;
  let y = 6;
  const drawn = entries.map((entry) => {
    const size = 26 + wordsWidth(entry.label) + 10;
    if (x + size > width && x > 12) {
      x = 12;
      y += LEGEND_LINE;
    }
    const svg = drawSign(entry, x, y) +
      `<text x="${x + 26}" y="${y + 10}">${escapeMarkup(entry.label)}</text>`;
    x += size;
    return svg;
  });
  return { svg: `<g>${drawn.join("")}</g>`, height: y + LEGEND_LINE };
}

function drawSign(entry: LegendEntry, x: number, y: number): string {
  if (entry.sign === "line" || entry.sign === "dash") {
    const dash = entry.sign === "dash" ? ' stroke-dasharray="5 3"' : "";
    return `<path d="M${x},${y + 6}h20" stroke="${entry.colour}" stroke-width="2.5"${dash}/>`;
  }
  return `<rect x="${x + 4}" y="${y}" width="14" height="12" fill="${entry.colour}" ` +
    `stroke="#1a2134" stroke-width="0.5"/>`;
}
