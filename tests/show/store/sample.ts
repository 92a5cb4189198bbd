/** A made-up store. */
import {
  type ComparedVariant,
  firstSteps,
  type HouseWay,
  type PowerCut,
  type RankedMeasure,
  REFINEMENTS,
  type RootZone,
  type StoreResolution,
  summariseStore,
  variantsCompared,
  waysCompared,
} from "../../../lib/store/mod.ts";
import { cropYear, findCrop } from "../../../lib/house/mod.ts";
import type { StoreResult } from "../../../lib/store/types.ts";
import { climateYear, zeros } from "../climate/sample.ts";
import { houseYear } from "../house/sample.ts";
import { daytime, heatSeries, hourly, made, season } from "../made.ts";

export const storeResult = summariseStore(
  { climate: climateYear, tubes: { count: 20, length: 22 } },
  made<StoreResult>({
    year: {
      house: houseYear(8),
      ...heatSeries(
        hourly((hour) => 6000 * daytime(hour) - 1500),
        hourly((hour) => 2000 * daytime(hour) - 300),
      ),
      intakeTemperature: zeros,
      outletTemperature: zeros,
      airRate: zeros,
      storeTemperature: hourly((hour) => 12 + 6 * season(hour - 700)),
      fanShare: zeros,
      fanPower: hourly(() => 60),
      condensate: hourly(() => 0.1),
      floor: hourly((hour) => 900 * daytime(hour) - 250),
    },
    noFan: houseYear(5),
    heatIn: 12000,
    heatOut: 8000,
    latentIn: 3000,
    latentOut: 1500,
    recovery: 0.67,
    cop: 15,
    fanEnergy: 525,
    carriedAcrossSeasons: 0.12,
    quarters: [
      [1000, 50, 20, 300, 80],
      [200, 1500, 10, 20, 40],
      [10, 200, 800, 5, 20],
      [20, 100, 400, 1500, 60],
    ],
    sections: {
      x: [-3, -2, -1, 0, 1, 2, 3],
      depths: [0.1, 0.4, 0.8, 1.4, 2.2],
      days: [0, 90, 181, 273],
      temperatures: [0, 1, 2, 3].map((season) =>
        Float64Array.from({ length: 35 }, (_, cell) => season * 5 - 3 + (cell % 7))
      ),
    },
    flows: [
      { from: "condensing vapour", to: "soil", heat: 3000 },
      { from: "floor", to: "soil", heat: 300 },
      { from: "soil", to: "house air", heat: 6500 },
    ],
    floorHeat: 300,
    stateOfCharge: hourly((hour) => 0.5 + 0.5 * season(hour - 700)),
    backupHeatNoFan: 24000,
    backupFanEnergy: 526,
    savedHeat: 4000,
    savedHeatPerFanEnergy: 7.6,
    taggedReturn: 0.3,
    edgeLoss: 2500,
    crop: cropYear(houseYear(8).airTemperature, findCrop("spinach")),
    cropNoFan: cropYear(houseYear(5).airTemperature, findCrop("spinach")),
    damp: { humid: 2000, dripping: 3000, condensed: 900 },
    dampNoFan: { humid: 2500, dripping: 3500, condensed: 1100 },
    backupYear: houseYear(5),
    earlyYears: [{ year: 1, heatIn: 13000, heatOut: 6000 }],
    yearsUntilPeriodic: 3,
    coldestSoil: -3,
    coldestHour: -6,
    coldestHourNoFan: -9,
    backupHeat: 20000,
    balanceResidual: 1e-9,
    notices: [],
  }),
);

/** A cut with hours, with none left, and with none in sight. */
export const cut: PowerCut = {
  hours: 96,
  crop: "spinach",
  cropLimit: -9,
  courses: ([["coldest hour", 173], ["coldest three days", 158]] as const).flatMap(
    ([start, hour]) =>
      [true, false].flatMap((heated) =>
        (["store", "fan kept running", "no store"] as const).map((way, index) => ({
          start,
          hour,
          heated,
          way,
          air: Float64Array.from({ length: 97 }, (_, after) => 2 - after / 8 - index),
          toFreezing: heated ? 2.5 : 0,
          toCropLimit: way === "fan kept running" ? null : 8.25,
          lowest: -10 - index,
        }))
      ),
  ),
  outdoors: (["coldest hour", "coldest three days"] as const).map((start) => ({
    start,
    air: new Float64Array(97).fill(-25),
  })),
};

export const ways: readonly HouseWay[] = waysCompared(
  [false, true].flatMap((store) =>
    [false, true].map((curtain) => ({
      name: `${store ? "store" : "no store"}, ${curtain ? "curtain" : "no curtain"}`,
      store,
      curtain,
      year: houseYear(3 + (store ? 3 : 0) + (curtain ? 4 : 0)),
      coldestHour: -17 + (store ? 3 : 0) + (curtain ? 4 : 0),
      hoursBelowFreezing: 2000,
      firstFreeze: store && curtain ? null : 7200,
      backupHeat: 40000 - (store ? 4000 : 0) - (curtain ? 12000 : 0),
      hoursBelow: [-10, -5, 0, 5].map((limit) => ({ limit, hours: 2000 + 100 * limit })),
    }))
  ),
);

export const variants: readonly ComparedVariant[] = variantsCompared(
  ["as planned", "longer", "drier"].map((name, k) => ({
    name,
    heatIn: 12000,
    heatOut: 8000,
    latentIn: 3000,
    fanEnergy: 500,
    recovery: 0.67,
    cop: 16,
    coldestHour: -6 + [0, 0.4, -0.7][k]!,
    hoursBelowFreezing: 900,
    backupHeat: 20000 - [0, 150, -600][k]!,
  })),
);

const changed = {
  coldestHour: -13,
  coldestHourGain: 1,
  hoursBelowFreezing: 1500,
  hoursBelowCropLimit: 600,
  cropHoursAvoided: 100,
};
const unchanged = {
  coldestHour: -14,
  coldestHourGain: 0,
  hoursBelowFreezing: 1700,
  hoursBelowCropLimit: 700,
  cropHoursAvoided: 0,
};
export const ranking: readonly RankedMeasure[] = [
  {
    name: "as it is",
    kind: "present",
    work: null,
    change: "",
    heatDemand: 30000,
    saved: 0,
    savedShare: 0,
    ...unchanged,
  },
  {
    name: "sealing",
    kind: "house",
    work: { id: "sealing", amount: 400, unit: "m²" },
    change: "leakage halved",
    heatDemand: 27000,
    saved: 3000,
    savedShare: 0.1,
    ...changed,
  },
  {
    name: "water barrels",
    kind: "house",
    work: { id: "sealing", amount: 400, unit: "m²" },
    change: "more water",
    heatDemand: 30300,
    saved: -300,
    savedShare: -0.01,
    ...changed,
  },
  {
    name: "heat store",
    kind: "store",
    work: null,
    change: "as planned",
    heatDemand: 26000,
    saved: 4000,
    savedShare: 0.13,
    ...changed,
  },
];

export const steps = firstSteps({
  curtain: true,
  store: { savedHeat: 4000, coldestHourGain: 3, fanEnergy: 525 },
  ranking,
  ways,
});

const resolved = {
  heatIn: 12000,
  heatOut: 8000,
  savedHeat: 3000,
  coldestHour: -8,
  coldestHourNoFan: -13,
};

/** Everything twice as fine moves the heats by a hundredth or less. */
export const resolution: StoreResolution = {
  plan: resolved,
  planSize: { cells: 4000, slices: 8, longestStep: 1800 },
  rows: REFINEMENTS.map(({ name, change }, k) => {
    const moved = {
      heatIn: 20 * k,
      heatOut: -15 * k,
      savedHeat: 5 * k,
      coldestHour: 0.01 * k,
      coldestHourNoFan: 0,
    };
    return {
      name,
      change,
      figures: { ...resolved, heatIn: 12000 + moved.heatIn, heatOut: 8000 + moved.heatOut },
      moved,
      shares: {
        heatIn: moved.heatIn / 12000,
        heatOut: moved.heatOut / 8000,
        savedHeat: moved.savedHeat / 3000,
      },
      cells: 4000,
      slices: 8,
      longestStep: 1800,
    };
  }),
  largest: { heatIn: 60, heatOut: 45, savedHeat: 15, coldestHour: 0.03, coldestHourNoFan: 0 },
  together: { heatIn: 120, heatOut: 90, savedHeat: 30, coldestHour: 0.06, coldestHourNoFan: 0 },
};

const bedDays = Array.from({ length: 53 }, (_, week) => 7 * week);
const bedYear = (warmer: number) => {
  const temperatures = bedDays.map((day) => 9 + warmer - 9 * Math.cos(2 * Math.PI * day / 365));
  return { temperatures, winterMean: 3 + warmer, coldest: warmer, weeksTooCold: 20 };
};

/** Beds half a kelvin warmer with the store. */
export const beds: RootZone = {
  crop: { name: "spinach", sprouting: { least: 1.7, low: 7.2, high: 23.9 } },
  days: bedDays,
  depths: [0.05, 0.2].map((depth) => ({
    depth,
    withStore: bedYear(0.5),
    noStore: bedYear(0),
    winterGain: 0.5,
  })),
};
