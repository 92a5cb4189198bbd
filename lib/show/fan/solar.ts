/** The fans on a solar panel with a battery. @module */
import * as Plot from "@observablehq/plot";
import type { SolarFan, SolarPanel } from "../../store/mod.ts";
import { showNumber } from "../../units/mod.ts";
import { MONTHS } from "../kit/calendar.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { shown } from "../kit/reader.ts";
import { paragraph, table } from "../kit/table.ts";

const NEVER = "The fan never runs in this year: nothing to supply.";

const kilowatts = (watts: number) => `${showNumber(watts / 1000, 2)} kW`;

/** Panels, what they meet by themselves, and the battery that meets the rest. */
export function solarFanTable({ panels }: SolarFan): DisplayItem {
  if (panels.length === 0) return paragraph(NEVER);
  return table(panels, [
    { head: "panel, rated, kW", value: (row) => row.power / 1000, digits: 2 },
    { head: "made in the year", value: (row) => row.energy, kind: "electricity" },
    { head: "charging met without a battery", value: (row) => row.chargeShare, kind: "share" },
    {
      head: "discharging met without a battery",
      value: (row) => row.dischargeShare,
      kind: "share",
    },
    {
      head: "battery for every hour, rated, kWh",
      value: (row) => row.battery === null ? "none is enough" : showNumber(row.battery, 1),
      right: true,
    },
  ], "The fans on a solar panel of their own");
}

/** Months of the fans beside those of the smallest panel of the table. */
export function solarFanChart({ months, fanPower, panels }: SolarFan): DisplayItem {
  if (panels.length === 0) return paragraph(NEVER);
  const names = months.map(({ month }) => MONTHS[month]!);
  const short = months.filter(({ fan, panel }) => panel < fan);
  return figure({
    height: 260,
    x: { label: null, domain: names },
    y: { label: "electricity, kWh", grid: true, zero: true },
    marks: [
      Plot.barY(months, {
        x: (row: { month: number }) => MONTHS[row.month]!,
        y: "fan",
        fill: PALETTE.cold,
      }),
      Plot.tickY(months, {
        x: (row: { month: number }) => MONTHS[row.month]!,
        y: "panel",
        stroke: PALETTE.ink,
        strokeWidth: 3,
      }),
      Plot.ruleY([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: "Electricity of the fans, and of a panel rated as high as they are",
    alt: `Electricity of the fans by month beside what a panel of ${
      kilowatts(fanPower)
    } makes; the panel makes less in ${short.length} of 12 months.`,
    note: short.length === 0
      ? "In every month the panel makes more than the fans take."
      : `The panel makes less than the fans take in ${
        short.map(({ month }) => MONTHS[month]!).join(", ")
      }.`,
    legend: [
      { label: "fans", colour: PALETTE.cold },
      { label: `panel of ${kilowatts(fanPower)}`, colour: PALETTE.ink },
    ],
    table: dataTable(months, [
      { head: "month", value: (row) => MONTHS[row.month]! },
      { head: "fans", value: (row) => row.fan, kind: "electricity" },
      { head: `panel of ${kilowatts(fanPower)}`, value: (row) => row.panel, kind: "electricity" },
    ]),
  });
}

function enoughWords(panels: readonly SolarPanel[]): string {
  const carrying = panels.filter(({ battery }) => battery !== null);
  const [least, most] = [carrying[0], carrying.at(-1)];
  if (least === undefined) {
    return "None of these panels carries the fans through this year, whatever the battery.";
  }
  const pair = ({ power, battery }: SolarPanel) =>
    `${kilowatts(power)} with a battery of ${shown(battery!, "electricity")}`;
  return least === most
    ? `Of these panels only the largest carries them through every hour: ${pair(least)}.`
    : `What carries them through every hour goes from ${pair(least)} to ${pair(most!)}.`;
}

/** What panel and battery come to, in words, with what they leave open. */
export function solarFanWords({ plane, fanEnergy, panels }: SolarFan): DisplayItem {
  if (panels.length === 0) return paragraph(NEVER);
  const last = panels.at(-1)!;
  const share = (value: number | null) => value === null ? "none" : shown(value, "share");
  return paragraph(
    `The fans take ${shown(fanEnergy, "electricity")} in the year. ${
      enoughWords(panels)
    } Without a ` +
      `battery even ${kilowatts(last.power)} meet ${
        share(last.chargeShare)
      } of what charging takes ` +
      `and ${
        share(last.dischargeShare)
      } of what discharging takes, which comes at night. The panel ` +
      `faces the equator at ${
        shown(plane.tilt, "angle", 0)
      }; 75 % of its rating reaches the fan, ` +
      "a battery gives back 85 % and may be emptied by 80 % (common practice, no source). Left out: " +
      "snow on the panel, a battery that is cold, winters worse than this year.",
  );
}
