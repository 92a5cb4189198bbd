/** How far the computation itself can be trusted: figures with cells, steps, slices and soil finer. @module */
import * as Plot from "@observablehq/plot";
import { RESOLVED_HEATS, type ResolvedHeat, type StoreResolution } from "../../store/mod.ts";
import { showNumber } from "../../units/mod.ts";
import { shown } from "../kit/reader.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { table } from "../kit/table.ts";

const WORDS: Readonly<Record<ResolvedHeat, string>> = {
  heatIn: "charged",
  heatOut: "discharged",
  savedHeat: "saved",
};

const COLOURS: Readonly<Record<ResolvedHeat, string>> = {
  heatIn: PALETTE.warm,
  heatOut: PALETTE.cold,
  savedHeat: PALETTE.soil,
};

/** Per cent by which each heat moves with one thing finer. */
export function resolutionChart(resolution: StoreResolution): DisplayItem {
  const { rows, largest, plan } = resolution;
  const bars = rows.flatMap(({ name, shares }) =>
    RESOLVED_HEATS.map((heat) => ({ name, heat: WORDS[heat], share: (shares[heat] ?? 0) * 100 }))
  );
  const most = Math.max(0.1, ...bars.map(({ share }) => Math.abs(share)));
  return figure({
    height: 70 + rows.length * 72,
    marginLeft: 90,
    marginRight: 80,
    x: { domain: [-1.3 * most, 1.3 * most], label: "moved against the study, %", grid: true },
    y: { domain: RESOLVED_HEATS.map((heat) => WORDS[heat]), label: null, padding: 0.2 },
    fy: { domain: rows.map(({ name }) => name), label: null },
    marks: [
      Plot.barX(bars, {
        x: "share",
        y: "heat",
        fy: "name",
        fill: ({ heat }: { heat: string }) =>
          COLOURS[RESOLVED_HEATS.find((one) => WORDS[one] === heat)!],
      }),
      Plot.ruleX([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: "How far the heats move when the computation is made finer",
    legend: RESOLVED_HEATS.map((heat) => ({ label: WORDS[heat], colour: COLOURS[heat] })),
    alt: `Largest movements: charged ${shown(largest.heatIn, "energy")} of ${
      shown(plan.heatIn, "energy")
    }, discharged ${shown(largest.heatOut, "energy")} of ${shown(plan.heatOut, "energy")}, saved ${
      shown(largest.savedHeat, "energy")
    } of ${shown(plan.savedHeat, "energy")} a year.`,
    note: "One thing at a time, all else as in the study; saved is back-up heat at the set point.",
  });
}

/** What is made finer, and how large the computation is then. */
export function refinementTable({ planSize, rows }: StoreResolution): DisplayItem {
  const own = { name: "study", change: "as it is run", ...planSize };
  return table([own, ...rows], [
    { head: "finer", value: ({ name }) => name },
    { head: "what is done", value: ({ change }) => change },
    { head: "cells of a slice", value: ({ cells }) => cells, kind: "count" },
    { head: "slices", value: ({ slices }) => slices, kind: "count" },
    { head: "longest step, s", value: ({ longestStep }) => longestStep, kind: "count" },
  ], "What is made finer");
}

/** The figures with one thing finer at a time, the study's own in the first line. */
export function resolutionTable({ plan, rows }: StoreResolution): DisplayItem {
  const own = { name: "study", figures: plan, shares: null };
  const share = (heat: ResolvedHeat) => ({ shares }: typeof own | typeof rows[number]) => {
    const value = shares?.[heat] ?? null;
    return value === null ? "–" : `${showNumber(100 * value, 2)}\u00a0%`;
  };
  return table([own, ...rows], [
    { head: "finer", value: ({ name }) => name },
    { head: "charged", value: ({ figures }) => figures.heatIn, kind: "energy", us: false },
    { head: "moved", value: share("heatIn"), right: true },
    { head: "discharged", value: ({ figures }) => figures.heatOut, kind: "energy", us: false },
    { head: "moved", value: share("heatOut"), right: true },
    { head: "saved", value: ({ figures }) => figures.savedHeat, kind: "energy", us: false },
    { head: "moved", value: share("savedHeat"), right: true },
    {
      head: "coldest hour",
      value: ({ figures }) => figures.coldestHour,
      kind: "temperature",
      digits: 2,
    },
    {
      head: "coldest hour, fan always off",
      value: ({ figures }) => figures.coldestHourNoFan,
      kind: "temperature",
      digits: 2,
    },
  ], "The year with one thing finer at a time");
}
