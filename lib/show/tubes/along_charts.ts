/** Pictures of the air along a tube and of the water it leaves. @module */
import * as Plot from "@observablehq/plot";
import { dataTable } from "../kit/data_table.ts";
import { showNumber } from "../../units/mod.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { MONTHS } from "../kit/calendar.ts";
import { paragraph } from "../kit/table.ts";
import type { SummarisedStore } from "../../store/mod.ts";
import type { TubeAlong } from "../../tubes/mod.ts";

/** Temperatures and heat of each metre along a tube, moist and dry; null where no hour charges. */
export function alongChart(tube: TubeAlong | null): DisplayItem {
  if (tube === null) return paragraph("No hour charges the store: there is no tube to follow.");
  const { rows, wall, intake } = tube;
  const { sensible, latent } = tube.moist;
  const x = { label: "distance along the tube, m", grid: true, zero: true } as const;
  const { temperature } = intake;
  const whole = [{ along: 0, temperature, dryTemperature: temperature }, ...rows];
  const stacked = rows.flatMap((row) => [
    { along: row.along, heat: row.sensible, part: "sensible" },
    { along: row.along, heat: row.latent, part: "latent" },
  ]);
  return figure([
    {
      height: 230,
      x,
      y: { label: "temperature, degC", grid: true },
      marks: [
        Plot.ruleY([wall], { stroke: PALETTE.soil, strokeDasharray: "4 3" }),
        Plot.lineY(whole, { x: "along", y: "temperature", stroke: PALETTE.warm, strokeWidth: 2.5 }),
        Plot.lineY(whole, {
          x: "along",
          y: "dryTemperature",
          stroke: PALETTE.ink,
          strokeDasharray: "7 3",
        }),
      ],
    },
    {
      height: 230,
      x,
      y: { label: "heat along the tube, W/m", grid: true, zero: true },
      marks: [
        Plot.areaY(stacked, {
          x: "along",
          y: "heat",
          fill: (row: { part: string }) => row.part === "latent" ? PALETTE.latent : PALETTE.warm,
          fillOpacity: 0.75,
          order: ["sensible", "latent"],
        }),
        Plot.lineY(rows, {
          x: "along",
          y: "dry",
          stroke: PALETTE.ink,
          strokeDasharray: "7 3",
        }),
      ],
      color: { type: "identity" },
    },
  ], {
    title: "One tube at the hour of strongest charging",
    alt: `Air temperature falls along the tube towards the wall at ${
      shown(wall, "temperature")
    }. The tube takes up ${shownBoth(sensible, "power")} sensible and ${
      shownBoth(latent, "power")
    } latent heat; the first metres take most.`,
    note: "Wall held at the mean temperature of the store in that hour, initially dry. " +
      "Dry air for comparison.",
    legend: [
      { label: "sensible, moist air", colour: PALETTE.warm },
      { label: "latent", colour: PALETTE.latent },
      { label: "dry air", colour: PALETTE.ink, sign: "dash" },
      { label: "wall", colour: PALETTE.soil, sign: "dash" },
    ],
    table: dataTable(rows.filter((_, index) => index % 6 === 5), [
      { head: "place", value: (row) => row.along, kind: "length" },
      { head: "air", value: (row) => row.temperature, kind: "temperature" },
      { head: "humidity", value: (row) => row.relativeHumidity, kind: "share" },
      { head: "sensible", value: (row) => row.sensible, kind: "heatPerLength" },
      { head: "latent", value: (row) => row.latent, kind: "heatPerLength" },
      { head: "dry air", value: (row) => row.dry, kind: "heatPerLength" },
    ]),
  });
}

/** Litres of water that the air leaves in the tubes and takes up again, by month. */
export function condensateChart({ summary }: Pick<SummarisedStore, "summary">): DisplayItem {
  const { net, wettestDay } = summary.condensate;
  const months = summary.heatMonths.map(({ month, condensate }) => ({
    name: MONTHS[month]!,
    litres: condensate,
  }));
  return figure({
    height: 260,
    x: { label: null, domain: months.map((row) => row.name) },
    y: { label: "water left in the tubes, litres", grid: true },
    marks: [
      Plot.barY(months, { x: "name", y: "litres", fill: PALETTE.latent }),
      Plot.ruleY([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: "Where the water goes",
    alt: `Condensate minus re-evaporation, by month; ${
      showNumber(net, 0)
    } litres remain over the year. The wettest day leaves ${
      showNumber(wettestDay, 0)
    } litres in the field.`,
    note:
      `Condensed minus evaporated; the wettest day leaves ${
        showNumber(wettestDay, 0)
      } litres in the field. ` +
      "Water that does not evaporate again has to drain or soak away.",
    table: dataTable(months, [
      { head: "month", value: (row) => row.name },
      { head: "litres left", value: (row) => row.litres, digits: 0 },
    ]),
  });
}
