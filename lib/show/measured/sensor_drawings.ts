/** The sensors' places, to scale: plan and section. @module */
import * as Plot from "@observablehq/plot";
import type { MonitoringPlan, PlannedSensor } from "../../measured/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { GREY, PALETTE } from "../kit/palette.ts";

interface Placed {
  readonly name: string;
  readonly zone: string;
  readonly along: number;
  readonly across: number;
  readonly depth: number;
}

/** Sensors in the ground, and those at tube ends, which sit at the return header. */
function placed({ sensors, field }: MonitoringPlan): Placed[] {
  return sensors.sensors.flatMap(({ column: { sensor } }: PlannedSensor) =>
    sensor.depth === undefined ? [] : [{
      name: sensor.name,
      zone: sensor.zone,
      along: sensor.x ?? field.length / 2,
      across: sensor.y ?? 0,
      depth: sensor.depth,
    }]
  );
}

const placesTable = (rows: readonly Placed[]) =>
  dataTable(rows, [
    { head: "sensor", value: ({ name }) => name },
    { head: "zone", value: ({ zone }) => zone },
    { head: "along the tubes from the middle", value: ({ along }) => along, kind: "length" },
    { head: "across from the middle", value: ({ across }) => across, kind: "length", digits: 2 },
    { head: "below the floor", value: ({ depth }) => depth, kind: "depth" },
  ]);

/** One word for sensors that stand over each other. */
function stacked(rows: readonly Placed[], key: (row: Placed) => string): Placed[] {
  return [...Map.groupBy(rows, key).values()].map((group) => ({
    ...group[0]!,
    name: group.length > 3
      ? `${group[0]!.name} to ${group.at(-1)!.name}`
      : group.map(({ name }) => name).join(", "),
  }));
}

/** Names of tube ends stand below their mark, of all others above; those outdoors to the left. */
const names = (rows: readonly Placed[], x: "along" | "across", y: "across" | "depth") =>
  [true, false].flatMap((end) =>
    [true, false].map((outdoors) =>
      Plot.text(
        rows.filter(({ zone }) => /^tube/.test(zone) === end && (zone === "garden") === outdoors),
        {
          x,
          y,
          text: "name",
          dx: outdoors ? -6 : 6,
          dy: end ? 10 : -8,
          textAnchor: outdoors ? "end" : "start",
          fontSize: 9,
          stroke: "white",
          strokeWidth: 3,
          fill: PALETTE.ink,
        },
      )
    )
  );

const dots = (rows: readonly Placed[], x: "along" | "across", y: "across" | "depth") => [
  Plot.dot(rows, { x, y, r: 3.5, fill: PALETTE.warm, stroke: "white" }),
  ...names(rows, x, y),
];

/** Plan to scale: house, tubes of the field, and where each sensor in the ground goes. */
export function sensorMap(plan: MonitoringPlan): DisplayItem {
  const { length, positions, houseAlong, houseAcross } = plan.field;
  const rows = placed(plan);
  const across = [...new Set(positions.map(({ x }) => x))];
  const shown = stacked(rows, ({ along, across }) => `${along.toFixed(1)} ${across.toFixed(1)}`);
  const far = Math.max(houseAlong / 2, ...rows.map(({ along }) => along)) + 3;
  return figure({
    height: 360,
    aspectRatio: 1,
    x: {
      label: "along the tubes, m (return header to the right)",
      domain: [-houseAlong / 2 - 1, far],
    },
    y: { label: "across, m", domain: [-houseAcross / 2 - 1, houseAcross / 2 + 1] },
    marks: [
      Plot.rect([0], {
        x1: -houseAlong / 2,
        x2: houseAlong / 2,
        y1: -houseAcross / 2,
        y2: houseAcross / 2,
        stroke: PALETTE.ink,
        fill: "none",
      }),
      Plot.link(across, {
        x1: -length / 2,
        x2: length / 2,
        y1: (y: number) => y,
        y2: (y: number) => y,
        stroke: GREY,
      }),
      ...dots(shown, "along", "across"),
    ],
  }, {
    title: "Where the sensors go, plan",
    alt:
      `Plan of the house with ${positions.length} tubes and ${rows.length} sensors in the ground ` +
      "or at tube ends, each with its name.",
    note:
      "Sensors in ducts and in the air are in the list. Have buried services located before any " +
      "probe is driven in.",
    legend: [
      { label: "sensor", colour: PALETTE.warm },
      { label: "tube", colour: GREY },
    ],
    table: placesTable(rows),
  });
}

/** Section across the tubes, to scale: tubes and the depths of the sensors in the house. */
export function sensorSection(plan: MonitoringPlan): DisplayItem {
  const { positions, houseAcross } = plan.field;
  const rows = placed(plan).filter(({ zone }) => zone !== "garden");
  const shown = stacked(rows, ({ across, depth }) => `${across.toFixed(2)} ${depth.toFixed(2)}`);
  const deepest = Math.max(
    ...rows.map(({ depth }) => depth),
    ...positions.map(({ depth }) => depth),
  );
  return figure({
    height: 300,
    aspectRatio: 1,
    x: { label: "across, m", domain: [-houseAcross / 2, houseAcross / 2 + 1] },
    y: { label: "below the floor, m", domain: [deepest + 0.4, -0.3] },
    marks: [
      Plot.ruleY([0], { stroke: PALETTE.ink }),
      Plot.dot(positions, { x: "x", y: "depth", r: 3, stroke: PALETTE.air }),
      ...dots(shown, "across", "depth"),
    ],
  }, {
    title: "Where the sensors go, section across the tubes",
    alt: `Section with ${positions.length} tubes and the depths of ${rows.length} sensors.`,
    note:
      "Soil probes stand half way between tubes; one that touches a tube wall measures the air.",
    legend: [
      { label: "sensor", colour: PALETTE.warm },
      { label: "tube", colour: PALETTE.air },
    ],
    table: placesTable(rows),
  });
}
