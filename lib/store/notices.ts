/** Plausibility of a store's year. @module */
import { showBoth, showPower, showRange, showSi } from "../units/mod.ts";
import { mean } from "d3-array";
import { type Notice, notice } from "../basics/mod.ts";
import type { StoreRequest } from "./site.ts";
import type { FreezingYear, StoreResult } from "./types.ts";

/** Figures the notices look at. */
export type JudgedStore = Omit<StoreResult, "notices" | "sections" | "flows">;

const heatText = (value: number) => showBoth(value, "energy");

/** kWh a year per m² of floor below which nothing worth the digging is stored; own judgement. */
const LEAST_CHARGE = 5;

/** kWh of heat given back for one of fan electricity: the most that monitored stores reached (trials, no single source). */
const MEASURED_COP = 7;

/** W/m² of global radiation over the year below which no place on land lies; own judgement. */
const LEAST_SUN = 60;

/** Share of the heat put in below which next to nothing comes back; own judgement. */
const LEAST_RETURN = 0.05;

/** Where the store makes no sense: hardly any charge, discharge or need. */
function pointNotices(store: JudgedStore, request: StoreRequest, floorArea: number): Notice[] {
  const found: Notice[] = [];
  const senseless = (why: string) =>
    found.push(notice("warning", "store", `The store is not worthwhile here: ${why}.`));
  const meanSun = mean(request.climate.globalHorizontal)!;
  if (store.backupHeatNoFan < 5 * floorArea / 10 && store.coldestHour > 2) {
    senseless(
      `the house needs hardly any heat (${heatText(store.backupHeatNoFan)} a year without it)`,
    );
  } else if (meanSun < LEAST_SUN) {
    senseless("there is too little sun to charge it");
  } else if (store.heatIn < LEAST_CHARGE * floorArea) {
    senseless(`it takes in only ${heatText(store.heatIn)} a year`);
  } else if (store.heatOut < store.fanEnergy) {
    senseless(
      `it gives back less heat (${heatText(store.heatOut)}) than its fan uses (${
        heatText(store.fanEnergy)
      })`,
    );
  }
  return found;
}

function performanceNotices(store: JudgedStore): Notice[] {
  const found: Notice[] = [];
  if (store.cop !== null && store.cop > MEASURED_COP) {
    found.push(notice(
      "warning",
      "store",
      `The coefficient of performance (heat discharged over fan energy) is ${
        showSi(store.cop, "ratio", 0)
      }; measured stores reach 1 to 7. Check fan efficiency, pressure, air flow and standby.`,
    ));
  } else if (store.cop !== null && store.heatOut > 0 && store.fanEnergy > 1 && store.cop < 1) {
    found.push(notice(
      "warning",
      "store",
      `The coefficient of performance (heat discharged over fan energy) is ${
        showSi(store.cop, "ratio")
      }: a plain electric heater gives more heat.`,
    ));
  }
  if (store.recovery !== null && store.recovery > 1) {
    found.push(notice(
      "warning",
      "store",
      `More heat comes out than goes in over the year (${
        showSi(store.recovery, "ratio")
      }): the excess is ground heat and floor heat, not stored solar heat.`,
    ));
  }
  if (store.nightLift !== null && store.nightLift > 10) {
    found.push(notice(
      "warning",
      "store",
      `The store lifts cold nights by ${
        showBoth(store.nightLift, "temperatureDifference")
      }, more than has been measured anywhere: it needs proof against a control house without a store.`,
    ));
  }
  if (store.condensed > store.evaporated && store.condensed > 10) {
    found.push(notice(
      "warning",
      "store",
      `More water condenses in the tubes (${
        showBoth(store.condensed, "mass")
      } a year) than crop and ` +
        `floor evaporate (${showBoth(store.evaporated, "mass")}).`,
    ));
  }
  return found;
}

/** Shares of what comes back mean something only where something comes back. */
function seasonNotices(store: JudgedStore): Notice[] {
  const found: Notice[] = [];
  const least = Math.max(store.fanEnergy, LEAST_RETURN * store.heatIn);
  if (!(store.heatOut > 0 && store.heatOut >= least)) return found;
  const [early] = store.earlyYears;
  if (early !== undefined) {
    const share = early.heatOut / store.heatOut;
    const years = store.yearsUntilPeriodic;
    found.push(notice(
      "info",
      "store",
      `The first year gives back ${showSi(share, "share")} of the heat of a settled year; ` +
        `it takes about ${years} ${years === 1 ? "year" : "years"} to settle within 2 %.`,
    ));
  }
  const ground = store.quarters.reduce((sum, row) => sum + row.at(-1)!, 0);
  if (ground > 0.5 * store.heatOut) {
    found.push(notice(
      "info",
      "store",
      `${
        showSi(ground / store.heatOut, "share")
      } of the heat given back comes from ground that the tubes never warmed.`,
    ));
  }
  return found;
}

/** Frozen ground is in the year; what it does to drains and footings is not. */
function freezingNotice(freezing: FreezingYear): Notice {
  const { coldest, hoursBelowFreezing, latentHeat, frozenDepth } = freezing;
  const amount = `${heatText(latentHeat)} of latent heat, as much as ${
    showBoth(frozenDepth, "depth")
  } of soil frozen through`;
  const where = hoursBelowFreezing > 0
    ? `Soil between the tubes freezes: below ${showBoth(0, "temperature")} for ${
      showSi(hoursBelowFreezing, "hours")
    }, lowest ${showBoth(coldest, "temperature")}`
    : "Soil under the floor freezes, but not between the tubes on average";
  return notice(
    "warning",
    "store",
    `${where}; at most ${amount}. Frozen wet soil heaves: take care with drains and footings.`,
  );
}

function physicsNotices(store: JudgedStore, request: StoreRequest): Notice[] {
  const found: Notice[] = [];
  if (store.freezing !== null) found.push(freezingNotice(store.freezing));
  const water = request.soilInputs.waterTableDepth;
  const deepest = Math.max(...request.tubes.positions.map((tube) => tube.depth));
  if (water !== null && water <= deepest + 0.5) {
    found.push(notice(
      "caution",
      "store",
      `The water table (${
        showBoth(water, "length")
      }) reaches the tubes: they fill with water, and moving ` +
        "water carries the heat away. The run ignores the water.",
    ));
  } else if (water !== null && water < request.inputs.meshDepth) {
    const depth = showBoth(water, "length");
    found.push(notice(
      "caution",
      "store",
      request.inputs.groundWaterMoves === true
        ? `The soil is held at its undisturbed temperature at the water table (${depth}), as if by moving ` +
          "water. Keep perforated tubes above its highest level."
        : `The groundwater (water table at ${depth}) is assumed still. If it moves, it carries heat away: ` +
          "ask someone who knows the ground, and run the study again with groundWaterMoves. Keep perforated " +
          "tubes above its highest level.",
    ));
  }
  if (store.drained > 50) {
    found.push(notice(
      "caution",
      "store",
      `About ${
        showBoth(store.drained, "mass")
      } of water a year drains inside the tubes: they need fall, a drain and access for cleaning; ` +
        "standing water breeds mould and bacteria. If people work in the house, ask an occupational hygienist.",
    ));
  }
  if (Math.abs(store.balanceResidual) > 1e-9) {
    found.push(notice(
      "warning",
      "store",
      `The heat balance does not close: residual ${
        showPower(store.balanceResidual)
      } of the throughput.`,
    ));
  }
  return found;
}

/** m/s towards the plate at which its relation was measured (Kutscher 1994 [kutscher-1994]). */
const MEASURED_SUCTION = { least: 0.02, most: 0.1 } as const;

/** What a plate collector brings, and whether it was made for that much air. */
function collectorNotices(store: JudgedStore, request: StoreRequest): Notice[] {
  const plate = request.inputs.collector;
  if (plate === undefined) return [];
  const found = [notice(
    "info",
    "store",
    `The plate collector gives the charging air ${heatText(store.collectedHeat)} a year.`,
  )];
  const { airFlow } = request.fan.charge ?? request.fan;
  const suction = airFlow / plate.area;
  const { least, most } = MEASURED_SUCTION;
  if (suction < least || suction > most) {
    found.push(notice(
      "warning",
      "store",
      `The fan draws ${
        showSi(suction, "speed", 3)
      } through the plate (store.collector.area): its ` +
        `heat exchange is known at ${showRange(least, most, "speed", 3)}, so at ${
          showRange(airFlow / most, airFlow / least, "area")
        } for this air flow.`,
    ));
  }
  return found;
}

/** All notices of a store's year. */
export function storeNotices(
  store: JudgedStore,
  request: StoreRequest,
  floorArea: number,
): Notice[] {
  return [
    ...pointNotices(store, request, floorArea),
    ...performanceNotices(store),
    ...seasonNotices(store),
    ...physicsNotices(store, request),
    ...collectorNotices(store, request),
  ];
}
