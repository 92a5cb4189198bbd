/** Insulation or store first? What each saves, from the results of a study. @module */
import type { DisplayItem } from "../kit/figure.ts";
import type { FirstStep } from "./first_steps_chart.ts";
import { showBoth } from "../../units/mod.ts";
import type { RankedMeasure } from "../../house/mod.ts";
import type { HouseWay, StoreResult } from "../../store/mod.ts";
import type { Study } from "../../study/mod.ts";
import { paragraph } from "../kit/table.ts";

/** What the steps are taken from. */
export interface FirstStepSources {
  /** result of the store chapter */
  readonly store: StoreResult;
  /** improvements of the house, the house as it is first */
  readonly ranking: readonly RankedMeasure[];
  /** with and without store and curtain */
  readonly ways: readonly HouseWay[];
}

function lowest(series: ArrayLike<number>): number {
  let low = Infinity;
  for (let index = 0; index < series.length; index++) low = Math.min(low, series[index]!);
  return low;
}

/** The curtain the study has already, against the same house without it; no store in either. */
function presentCurtain(ways: readonly HouseWay[]): FirstStep | undefined {
  const bare = ways.find((way) => !way.store && !way.curtain);
  const curtained = ways.find((way) => !way.store && way.curtain);
  if (bare === undefined || curtained === undefined) return undefined;
  return {
    name: "night curtain",
    kind: "present",
    saved: bare.backupHeat - curtained.backupHeat,
    coldestHourGain: curtained.coldestHour - bare.coldestHour,
    electricity: 0,
  };
}

/**
 * The store, the improvements of the house still to be made, and the curtain where the study has
 * one, the largest saving of heat first.
 *
 * @param study the study
 * @param sources results of its chapters
 */
export function firstSteps(study: Study, sources: FirstStepSources): readonly FirstStep[] {
  const { store, ranking, ways } = sources;
  const curtain = study.house.curtain === null ? undefined : presentCurtain(ways);
  const steps: FirstStep[] = [
    {
      name: "heat store, as planned",
      kind: "store",
      saved: store.backupHeatNoFan - store.backupHeat,
      coldestHourGain: store.coldestHour - lowest(store.noFan.airTemperature),
      electricity: store.fanEnergy,
    },
    ...ranking.slice(1).map((measure): FirstStep => ({
      name: measure.name,
      kind: "house",
      saved: measure.saved,
      coldestHourGain: measure.coldestHourGain,
      electricity: 0,
    })),
    ...(curtain === undefined ? [] : [curtain]),
  ];
  return steps.toSorted((a, b) => b.saved - a.saved);
}

/** "Insulation or store first?", answered. */
export function firstStepsWords(steps: readonly FirstStep[]): DisplayItem {
  const store = steps.find((step) => step.kind === "store")!;
  const house = steps.filter((step) => step.kind === "house");
  const larger = house.filter((step) => step.saved > store.saved);
  const net = store.saved - store.electricity;
  const lift = house.filter((step) => step.coldestHourGain > store.coldestHourGain);
  const names = (list: readonly FirstStep[]) => list.map((step) => step.name).join(", ");
  const kelvin = (value: number) => showBoth(value, "temperatureDifference");
  const verdict = store.saved <= 0
    ? "The store saves no heat in this house and climate: do not dig for heat."
    : larger.length > 0
    ? `${
      larger.length === 1 ? "One improvement saves" : `${larger.length} improvements each save`
    } more heat than the store (${showBoth(store.saved, "energy")} a year): ${names(larger)}. Do ${
      larger.length === 1 ? "that" : "those"
    } first.`
    : `No remaining improvement saves as much heat as the store (${
      showBoth(store.saved, "energy")
    } a year), but compare the price of each with that of digging: each also makes the stored heat go further.`;
  const cold = lift.length > 0
    ? ` Raising the coldest hour by more than the store does (${kelvin(store.coldestHourGain)}): ${
      names(lift)
    }.`
    : ` The store raises the coldest hour most: by ${kelvin(store.coldestHourGain)}.`;
  const fan = store.saved > 0
    ? ` The store's fan uses ${
      showBoth(store.electricity, "energy")
    } of electricity a year; deducting that leaves ${showBoth(net, "energy")}.`
    : "";
  return paragraph(verdict + cold + fan);
}
