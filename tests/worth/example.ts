import { type PriceList, readPriceList, type WorthRequest } from "winterground/worth/mod.ts";
import { DEFAULTS } from "../harness/defaults.ts";
import { exampleTakeOff } from "./quantities/example.ts";

/** Everything known exactly. */
export const NO_DOUBT = {
  doubtFirstCost: 0,
  doubtHeatSaved: 0,
  doubtFanEnergy: 0,
  doubtFuelPrice: 0,
  doubtElectricityPrice: 0,
  doubtDiscountRate: 0,
} as const;

/** Everything that the made-up field takes, with its unit. */
export const IDS: readonly (readonly [string, string])[] = [
  ["tube:corrugated 100", "m"],
  ["header-pipe", "m"],
  ["header-hole", "pieces"],
  ["tube-connector", "pieces"],
  ["tube-bend", "pieces"],
  ["header-cap", "pieces"],
  ["riser-pipe", "m"],
  ["riser-tee", "pieces"],
  ["rodent-mesh", "m2"],
  ["excavation", "m3 bank"],
  ["bedding", "m3"],
  ["backfill", "m3"],
  ["machine-day", "days"],
  ["filter-fabric", "m2"],
  ["fan:test-fan", "pieces"],
  ["fan-guard", "pieces"],
  ["isolator", "pieces"],
  ["flap", "pieces"],
  ["thermostat", "pieces"],
  ["electrician", "pieces"],
  ["drain", "pieces"],
  ["sump", "pieces"],
  ["frost-alarm", "pieces"],
  ["permit", "pieces"],
  ["labour", "h"],
  ["electricity", "kWh"],
  ["fuel:propane", "L"],
];

/** A price list of everything, `factor` times as dear, without one id. */
export function prices(factor = 1, without = ""): PriceList {
  const rows = IDS.filter(([id]) => id !== without).map(([id, unit], index) =>
    `${id},${factor * (1 + index / 10)},${unit},EUR,${
      id.startsWith("fan:") ? 10 : ""
    },2026-01-02,made up`
  );
  return readPriceList(
    ["id,price,unit,currency,life_years,date,source", ...rows].join("\n"),
    "p.csv",
  );
}

/** A made-up store that saves 4000 kWh of heat a year. */
export function request(changes: Partial<WorthRequest["inputs"]> = {}): WorthRequest {
  return {
    inputs: { ...DEFAULTS.worth, prices: prices(), fuel: "propane", efficiency: 0.85, ...changes },
    field: exampleTakeOff(),
    energy: { backupHeat: 8000, backupHeatNoFan: 12_000, fanEnergy: 900 },
    faults: [],
    measures: [],
    coldestHourGain: 4,
    cropHoursAvoided: 60,
    runsFree: false,
  };
}
