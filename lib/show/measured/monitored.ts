/** What commissioning and pressure found: tube by tube, day by day. @module */
import * as Plot from "@observablehq/plot";
import type { BlockedDay, BlockedTubes, CommissioningVerdict } from "../../measured/mod.ts";
import { showNumber } from "../../units/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { paragraph, table } from "../kit/table.ts";

export type { BlockedDay, BlockedTubes, CommissioningVerdict } from "../../measured/mod.ts";
export { judgeCommissioning } from "../../measured/mod.ts";

/** Every tube that was measured, scaled to the design's mean, and whether it is accepted. */
export function commissioningVerdictTable(verdicts: readonly CommissioningVerdict[]): DisplayItem {
  const measured = verdicts.filter(({ verdict }) => verdict !== "not measured");
  if (measured.length === 0) {
    return paragraph("No speed is given yet: write those of the day, tube by tube, in m/s.");
  }
  const off = measured.filter(({ verdict }) => verdict !== "accept").length;
  return table(measured, [
    { head: "tube", value: ({ tube }) => tube, digits: 0 },
    { head: "air speed, scaled", value: ({ scaled }) => scaled, kind: "speed" },
    { head: "verdict", value: ({ verdict }) => verdict },
  ], `Every tube: ${off} of ${measured.length} outside their limits`);
}

/** Resistance of the field day by day against the first days, with what was found. */
export function blockedDaysChart({ days, findings, untested, limit }: BlockedTubes): DisplayItem {
  const there = days.filter(({ resistance }) => Number.isFinite(resistance));
  if (limit === null || there.length === 0) {
    return paragraph(`${untested ?? "The fan ran too little on every day to tell shut tubes"}.`);
  }
  const date = ({ start }: BlockedDay) => new Date(1000 * start);
  const words = findings.length === 0
    ? "No day stands over the limit for long."
    : findings.map(({ message }) => `${message}.`).join(" ");
  return figure({
    height: 260,
    x: { type: "utc", label: null },
    y: { label: "resistance over that of the first days, –", grid: true },
    marks: [
      Plot.ruleY([limit], { stroke: PALETTE.ink, strokeDasharray: "4 3" }),
      Plot.dot(there, {
        x: date,
        y: ({ resistance }: BlockedDay) => resistance,
        r: 2.5,
        fill: ({ shut }: BlockedDay) => shut > 0 ? PALETTE.warm : PALETTE.air,
      }),
    ],
    color: { type: "identity" },
  }, {
    title: "Does the field resist more than it did?",
    alt: `Resistance of ${there.length} days against a limit of ${showNumber(limit, 3)}. ${words}`,
    note: words,
    legend: [
      { label: "day below the limit", colour: PALETTE.air },
      { label: "day above it", colour: PALETTE.warm },
      { label: "limit", colour: PALETTE.ink, sign: "dash" },
    ],
    table: dataTable(there, [
      { head: "day, UTC", value: (row) => date(row).toISOString().slice(0, 10) },
      { head: "resistance over the first days", value: (row) => row.resistance, digits: 3 },
      { head: "tubes shut, about", value: (row) => row.shut, digits: 0 },
    ]),
  });
}
