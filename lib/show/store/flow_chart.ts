/** The year's heat as a flow picture: bands from where heat comes to where it goes. @module */
import type { SummarisedStore } from "../../store/mod.ts";
import type { HeatFlow } from "../../store/types.ts";
import { dataTable } from "../kit/data_table.ts";
import { shown } from "../kit/reader.ts";
import { escapeMarkup } from "../kit/escape.ts";
import { type DisplayItem, pictureItem } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { NOTEBOOK_WIDTH } from "../kit/layout.ts";

/** Name of the place in the middle. */
const SOIL = "soil";
/** px */
const BAND_HEIGHT = 190;
const MIDDLE = { left: 345, width: 70, top: 46 };
const EDGE = { left: 215, right: 545 };
const GAP = 34;

const COLOURS: Readonly<Record<string, string>> = {
  "sensible heat of house air": PALETTE.warm,
  "condensing vapour": PALETTE.latent,
  "house floor, hours of warming": PALETTE.soil,
  "house floor, hours of cooling": PALETTE.soil,
  "house air": PALETTE.cold,
  "vapour to the house": PALETTE.ink,
};

/** A band between two upright edges: straight ends, an S between them. */
function band(given: {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly width: number;
  readonly colour: string;
}): string {
  const [x1, y1] = given.from;
  const [x2, y2] = given.to;
  const middle = (x1 + x2) / 2;
  const n = (value: number) => value.toFixed(1);
  return `<path fill="${given.colour}" fill-opacity="0.75" stroke="#1a2134" stroke-width="0.5" d="` +
    `M${n(x1)},${n(y1)}C${n(middle)},${n(y1)} ${n(middle)},${n(y2)} ${n(x2)},${n(y2)}` +
    `v${n(given.width)}C${n(middle)},${n(y2 + given.width)} ${n(middle)},${n(y1 + given.width)} ` +
    `${n(x1)},${n(y1 + given.width)}z"/>`;
}

/** Bands of one side, with their words at the outer end. */
function side(flows: readonly HeatFlow[], scale: number, incoming: boolean): string {
  const heights = flows.map((flow) => Math.max(1, flow.heat * scale));
  let inner = MIDDLE.top;
  let outer = 26;
  return flows.map((flow, index) => {
    const width = heights[index]!;
    const place = incoming ? flow.from : flow.to;
    const colour = COLOURS[place] ?? PALETTE.air;
    const drawn = incoming
      ? band({ from: [EDGE.left, outer], to: [MIDDLE.left, inner], width, colour })
      : band({
        from: [MIDDLE.left + MIDDLE.width, inner],
        to: [EDGE.right, outer],
        width,
        colour,
      });
    const x = incoming ? EDGE.left - 8 : EDGE.right + 8;
    const anchor = incoming ? "end" : "start";
    const y = outer + width / 2;
    const words =
      `<text x="${x}" y="${(y - 3).toFixed(1)}" text-anchor="${anchor}">${
        escapeMarkup(place)
      }</text><text x="${x}" y="${(y + 12).toFixed(1)}" text-anchor="${anchor}" ` +
      `font-weight="bold">${escapeMarkup(shown(flow.heat, "energy"))}</text>`;
    inner += width;
    outer += Math.max(width, 10) + GAP - Math.min(12, width / 4);
    return drawn + words;
  }).join("");
}

/** Flow picture of the year's heat through the soil. */
export function heatFlowChart({ summary }: Pick<SummarisedStore, "summary">): DisplayItem {
  const { flows } = summary;
  const into = flows.filter((flow) => flow.to === SOIL);
  const out = flows.filter((flow) => flow.from === SOIL);
  const total = (list: readonly HeatFlow[]) => list.reduce((sum, flow) => sum + flow.heat, 0);
  const most = Math.max(total(into), total(out), 1e-9);
  const scale = BAND_HEIGHT / most;
  const rows = Math.max(into.length, out.length, 1);
  const height = BAND_HEIGHT + rows * 30 + 26;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${NOTEBOOK_WIDTH}" ` +
    `height="${height}" viewBox="0 0 ${NOTEBOOK_WIDTH} ${height}" ` +
    `font-family="system-ui, sans-serif" font-size="12">` +
    `<rect width="100%" height="100%" fill="white"/>${side(into, scale, true)}${
      side(out, scale, false)
    }<rect x="${MIDDLE.left}" y="${MIDDLE.top}" width="${MIDDLE.width}" height="${BAND_HEIGHT}" ` +
    `fill="${PALETTE.soil}"/><text x="${MIDDLE.left + MIDDLE.width / 2}" ` +
    `y="${MIDDLE.top + BAND_HEIGHT / 2 + 4}" text-anchor="middle" fill="white" ` +
    `font-weight="bold">soil</text></svg>`;
  return pictureItem(svg, {
    title: "Where the soil's heat comes from and where it goes in a year",
    alt: `Into the soil: ${
      into.map((flow) => `${flow.from} ${shown(flow.heat, "energy")}`).join(", ")
    }. Out of it: ${out.map((flow) => `${flow.to} ${shown(flow.heat, "energy")}`).join(", ")}.`,
    note: "Widths are proportional to heat. The fan's own electricity is part of the sensible " +
      "heat. The floor takes and gives heat without any tubes; the ground is the year's balance.",
    table: dataTable(flows, [
      { head: "from", value: (flow) => flow.from },
      { head: "to", value: (flow) => flow.to },
      { head: "heat", value: (flow) => flow.heat, kind: "energy" },
    ]),
  });
}
