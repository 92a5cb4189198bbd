/** Tables of the measured chapter. @module */
import { AGREEMENT_LIMITS, type MeasuredResult, type PlanAgreement } from "../../measured/mod.ts";
import { momentText } from "./moment.ts";
import type { Cell } from "../kit/data_table.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { numbers, paragraph, table } from "../kit/table.ts";
import { type Kind, showNumber } from "../../units/mod.ts";
import { shownBoth } from "../kit/reader.ts";
import { liftSentence } from "./lift_words.ts";
import { rangeText } from "./range_words.ts";

/** A sentence in place of what is not measured. */
export function nothing({ reason }: MeasuredResult): DisplayItem {
  return paragraph(`Nothing is shown here: ${reason}.`);
}

/** Channel by channel: what is there and what was found false. */
export function channelsTable(result: MeasuredResult): DisplayItem {
  if (result.season === null) return nothing(result);
  return table(result.season.channels, [
    { head: "sensor", value: (row) => row.name },
    { head: "measures", value: (row) => row.words },
    { head: "where", value: (row) => row.zone },
    { head: "logged", value: (row) => row.there, kind: "share" },
    { head: "found false", value: (row) => row.flagged, kind: "share" },
  ], "Sensors of the log");
}

/** Faults with time, channel and what to do. */
export function findingsTable(result: MeasuredResult): DisplayItem {
  const { season } = result;
  if (season === null) return nothing(result);
  if (season.findings.length === 0) return paragraph("No fault was found in the logs.");
  return table(season.findings, [
    { head: "where", value: (row) => row.channel },
    { head: "from", value: (row) => momentText(row.from, season.timeZone), right: true },
    { head: "to", value: (row) => momentText(row.to, season.timeZone), right: true },
    { head: "what was found, and what to do", value: (row) => row.message },
  ], "Faults found in the logs, in local standard time");
}

/** The season in numbers, each with its range. */
export function sumsTable(result: MeasuredResult): DisplayItem {
  const { season } = result;
  if (season === null) return nothing(result);
  const { heatIn, heatOut, latentIn, latentOut, fanEnergy, recovery, cop } = season.sums;
  const rows: readonly (readonly [string, typeof heatIn | null, Kind])[] = [
    ["heat put in", heatIn, "energy"],
    ["of it latent: water that condensed", latentIn, "energy"],
    ["heat given back", heatOut, "energy"],
    ["of it latent: negative where water evaporated", latentOut, "energy"],
    ["electricity of the fans", fanEnergy, "electricity"],
    ["recovery: given back over put in", recovery, "share"],
    ["given back for each kilowatt-hour of the fans", cop, "ratio"],
  ];
  return numbers(rows.map(([label, value, kind]) => ({
    label,
    value: value?.value ?? null,
    kind,
    note: value === null ? "" : rangeText(value, kind),
  })));
}

/** What was planned and what was measured. */
export function planTable(result: MeasuredResult): DisplayItem {
  const { plan } = result;
  if (plan === null) return nothing(result);
  const both = (value: number, kind: Kind): Cell => shownBoth(value, kind);
  return table(plan.rows, [
    { head: "over the hours that were logged", value: (row) => row.name },
    { head: "planned", value: (row) => both(row.planned, row.kind), right: true },
    { head: "measured", value: (row) => both(row.measured.value, row.kind), right: true },
    { head: "range", value: (row) => rangeText(row.measured, row.kind), right: true },
    { head: "", value: (row) => row.apart ? "not as planned" : "as planned" },
  ]);
}

/** NMBE and CV(RMSE) of the plan, with their ranges and the usual limits. */
export function agreementTable(result: MeasuredResult): DisplayItem {
  const { plan } = result;
  if (plan === null) return nothing(result);
  const percent = (value: number) => `${showNumber(100 * value, 1)} %`;
  const rows: readonly (readonly [string, PlanAgreement])[] = [
    ["by hour", plan.hourly],
    ["by day", plan.daily],
  ];
  const { nmbe, cvRmse } = AGREEMENT_LIMITS.hourly;
  return table(
    rows,
    [
      { head: "heat moved by the air", value: ([name, { count }]) => `${name}, ${count} of them` },
      { head: "NMBE", value: ([, one]) => percent(one.nmbe), right: true },
      { head: "range", value: ([, one]) => one.nmbeRange.map(percent).join(" to "), right: true },
      { head: "CV(RMSE)", value: ([, one]) => percent(one.cvRmse), right: true },
      { head: "range", value: ([, one]) => one.cvRmseRange.map(percent).join(" to "), right: true },
    ],
    `Measured less planned, p = 1; a fitted model is held to ${percent(nmbe)} and ${
      percent(cvRmse)
    } by hour`,
  );
}

/** What became of the heat. */
export function balanceTable(result: MeasuredResult): DisplayItem {
  const { balance } = result;
  if (balance === null) return nothing(result);
  const line = (label: string, value: typeof balance.left | null) => ({
    label,
    value: value?.value ?? null,
    kind: "energy" as const,
    note: value === null ? "no probes between the tubes" : rangeText(value, "energy"),
  });
  return numbers([
    line("put in less given back by the air", balance.left),
    line("more heat in the soil down to the lowest tubes", balance.gained),
    line("to floor, edges and the ground below", balance.rest),
  ]);
}

/** Whether the store warms the house, and whether that is real. */
export function liftWords(result: MeasuredResult): DisplayItem {
  return result.season === null ? nothing(result) : paragraph(liftSentence(result.season.lift));
}
