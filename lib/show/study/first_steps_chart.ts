/** "Insulation or store first?": what changes of the house and the store save, on one axis. @module */
import * as Plot from "@observablehq/plot";
import type { FirstStep } from "../../store/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { shown, shownNumber } from "../kit/reader.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";

const COLOURS: Readonly<Record<FirstStep["kind"], string>> = {
  house: PALETTE.warm,
  store: PALETTE.soil,
  present: PALETTE.air,
};

const KIND_WORDS: Readonly<Record<FirstStep["kind"], string>> = {
  house: "house, still to do",
  store: "heat store",
  present: "already in the study",
};

/** Heat saved and lift of the coldest hour, the steps in the order given. */
export function firstStepsChart(steps: readonly FirstStep[]): DisplayItem {
  const names = steps.map((step) => step.name);
  const bars = (
    value: "saved" | "coldestHourGain",
    label: string,
    kind: "energy" | "temperatureDifference",
  ) => {
    const values = steps.map((step) => step[value]);
    const least = Math.min(0, ...values);
    const most = Math.max(kind === "energy" ? 1 : 0.1, ...values);
    const span = most - least;
    return {
      height: 62 + steps.length * 26,
      marginLeft: 185,
      marginTop: 10,
      x: { label, grid: true, domain: [least - (least < 0 ? 0.12 * span : 0), most + 0.16 * span] },
      y: { domain: names, label: null, padding: 0.3 },
      marks: [
        Plot.barX(steps, { x: value, y: "name", fill: (step: FirstStep) => COLOURS[step.kind] }),
        Plot.text(steps, {
          x: (step: FirstStep) => Math.max(0, step[value]),
          y: "name",
          text: (step: FirstStep) => shownNumber(step[value], kind),
          textAnchor: "start",
          dx: 5,
        }),
        Plot.ruleX([0], { stroke: PALETTE.ink }),
      ],
    };
  };
  const kinds = [...new Set(steps.map((step) => step.kind))];
  return figure([
    bars("saved", "heating saved at the set point, kWh a year", "energy"),
    bars(
      "coldestHourGain",
      "rise of the coldest hour without a heater, K",
      "temperatureDifference",
    ),
  ], {
    title: "Insulation or store first?",
    alt: `Heat saved and rise of the coldest hour. ${
      steps.map((step) =>
        `${step.name}: ${shown(step.saved, "energy")}, ${
          shown(step.coldestHourGain, "temperatureDifference")
        }`
      ).join(". ")
    }.`,
    note:
      "Each on its own, all else unchanged: two together save less than the sum. The store also uses " +
      "electricity; see the table.",
    legend: kinds.map((kind) => ({ label: KIND_WORDS[kind], colour: COLOURS[kind] })),
    table: dataTable(steps, [
      { head: "step", value: (step) => step.name },
      { head: "", value: (step) => KIND_WORDS[step.kind] },
      { head: "heat saved", value: (step) => step.saved, kind: "energy" },
      { head: "electricity used", value: (step) => step.electricity, kind: "electricity" },
      {
        head: "coldest hour warmer by",
        value: (step) => step.coldestHourGain,
        kind: "temperatureDifference",
      },
    ]),
  });
}
