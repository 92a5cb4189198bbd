/** The store chapter: what happens over days, seasons and years? @module */
import { max, min, sum } from "d3-array";
import {
  alone,
  kilowattHours,
  MONTH_DAYS,
  monthlyHeat,
  monthlyMeans,
  piece,
  ratio,
  type Steps,
  together,
} from "../basics/mod.ts";
import { cropYear, dampHours, findCrop } from "../house/mod.ts";
import type { HouseYear } from "../house/types.ts";
import { baselineRequest } from "./baseline.ts";
import { heatFlows } from "./ledger/flows.ts";
import { balanceResidual, type SoilLedger } from "./ledger/ledger.ts";
import { carriedShare, type TagLedger } from "./ledger/tag_ledger.ts";
import { storeNotices } from "./notices.ts";
import {
  baselineTask,
  firstYearsTask,
  mainYearTask,
  orBaseline,
  reducedStores,
  settledTask,
} from "./runs.ts";
import { ownSite } from "./seasons/soil_model.ts";
import { yearsUntilPeriodic } from "./seasons/spin_up.ts";
import type { StoreRequest, StoreSite } from "./site.ts";
import type { StoreMonth, StoreResult, StoreYear, TaggedQuarter } from "./types.ts";

function monthsOf(year: StoreYear, backup: HouseYear, backupNoFan: HouseYear): StoreMonth[] {
  const total = (sensible: Float64Array, latent: Float64Array) =>
    monthlyHeat(sensible.map((value, hour) => value + latent[hour]!));
  const heatIn = total(year.sensibleIn, year.latentIn);
  const heatOut = total(year.sensibleOut, year.latentOut);
  const [latentIn, latentOut] = [monthlyHeat(year.latentIn), monthlyHeat(year.latentOut)];
  const fan = monthlyHeat(year.fanPower);
  const store = monthlyMeans(year.storeTemperature);
  const [heater, heaterNoFan] = [monthlyHeat(backup.heater), monthlyHeat(backupNoFan.heater)];
  return MONTH_DAYS.map((_, k) => ({
    month: k + 1,
    heatIn: heatIn[k]!,
    heatOut: heatOut[k]!,
    latentIn: latentIn[k]!,
    latentOut: latentOut[k]!,
    fanEnergy: fan[k]!,
    storeTemperature: store[k]!,
    backupHeat: heater[k]!,
    backupHeatNoFan: heaterNoFan[k]!,
  }));
}

function taggedQuarters(tags: TagLedger): TaggedQuarter[] {
  return Array.from({ length: 4 }, (_, k) => ({
    putIn: kilowattHours(tags.putIn[k]!),
    givenBack: kilowattHours(tags.back.reduce((sum, row) => sum + row[k]!, 0)),
    sameQuarter: kilowattHours(tags.sameQuarter[k]!),
    throughFloor: kilowattHours(tags.floor[k]!),
    lost: kilowattHours(tags.lost[k]!),
    remaining: kilowattHours(tags.gained[k]!),
  }));
}

/** K: with fan less without, over the hours without sun and below 8 °C outside. */
function nightLift(request: StoreRequest, withFan: HouseYear, without: HouseYear): number | null {
  let sum = 0;
  let hours = 0;
  withFan.airTemperature.forEach((air, hour) => {
    if (request.climate.globalHorizontal[hour]! > 0 || request.climate.dryBulb[hour]! > 8) return;
    sum += air - without.airTemperature[hour]!;
    hours++;
  });
  return ratio(sum, hours);
}

/** J that leave the soil for the ground and air outdoors. */
function heatToOutdoors(ledger: SoilLedger, site: StoreSite): number {
  // where the lower end is not held, only the end walls conduct to the deep ground
  return -(ledger.outdoor + (site.deepHeld ? 0 : ledger.deep));
}

function stateOfCharge(year: StoreYear): Float64Array {
  const { storeTemperature } = year;
  const low = min(storeTemperature)!;
  const high = max(storeTemperature)!;
  const span = Math.max(high - low, 1e-6);
  return storeTemperature.map((value) => (value - low) / span);
}

/**
 * Runs the store: an hourly year in half hours, finer up to a switch of the fan, tubes in every slice of 2-D
 * soil, house, floor and tubes coupled in the same step; the same with the fan never on; and both
 * again with a heater that keeps the set point.
 *
 * The house runs free in the main year. Soil: conduction reduced to a few dozen states, and freezing
 * (docs/store.md gives equations, checks and limits).
 *
 * @param request inputs and the results of the earlier chapters
 * @throws {InputError} where tubes, house and mesh do not fit together
 */
export function storeChapter(request: StoreRequest): StoreResult {
  return alone(storeSteps(request));
}

/**
 * The store in pieces: once the soil is reduced, none of its years waits for another. Parameters and
 * result are those of {@link storeChapter}.
 */
export function* storeSteps(request: StoreRequest): Steps<StoreResult> {
  const site = ownSite(request);
  const [reduced, bare] = yield* reducedStores([request, baselineRequest(request)]);
  const store = reduced!;
  const [main, plain, heated, noFan, backupNoFan] = yield* together(
    piece(mainYearTask, store),
    piece(firstYearsTask, store),
    piece(settledTask, { ...store, heated: true }),
    piece(baselineTask, { ...bare!, heated: false }),
    piece(baselineTask, { ...bare!, heated: true }),
  );
  const { ledger, tags } = main;
  const backup = orBaseline(heated, backupNoFan);
  const year = main.fanRan ? main.year : { ...main.year, house: noFan.year };
  const outdoors = heatToOutdoors(ledger, site);
  const air = year.house.airTemperature;
  const fanEnergy = kilowattHours(ledger.fanEnergy);
  const heatIn = kilowattHours(ledger.heatIn);
  const heatOut = kilowattHours(ledger.heatOut);
  const backupHeat = kilowattHours(backup.ledger.heater);
  const backupFanEnergy = kilowattHours(backup.ledger.fanEnergy);
  const backupHeatNoFan = kilowattHours(backupNoFan.ledger.heater);
  const savedHeat = backupHeatNoFan - backupHeat;
  const quarters = tags.back.map((row) => Array.from(row, kilowattHours));
  const grown = findCrop(request.houseInputs.crop);
  const crop = cropYear(air, grown);
  const hoursOf = (sign: number) =>
    year.fanShare.reduce((sum, share) => sum + (share * sign > 0 ? Math.abs(share) : 0), 0);
  const judged = {
    year,
    noFan: noFan.year,
    heatIn,
    heatOut,
    latentIn: kilowattHours(ledger.latentIn),
    latentOut: kilowattHours(ledger.latentOut),
    recovery: ratio(heatOut, heatIn),
    cop: ratio(heatOut, fanEnergy),
    fanEnergy,
    carriedAcrossSeasons: carriedShare(tags, ledger.heatOut),
    quarters,
    tagged: taggedQuarters(tags),
    coldestHour: min(air)!,
    coldestHourNoFan: min(noFan.year.airTemperature)!,
    crop,
    cropNoFan: cropYear(noFan.year.airTemperature, grown),
    damp: dampHours(year.house, site.floorArea),
    dampNoFan: dampHours(noFan.year, site.floorArea),
    backupHeat,
    backupHeatNoFan,
    backupFanEnergy,
    savedHeat,
    savedHeatPerFanEnergy: ratio(savedHeat, backupFanEnergy),
    taggedReturn: ratio(sum(quarters, (row) => sum(row.slice(0, 4))), heatIn),
    edgeLoss: kilowattHours(outdoors),
    edgeLossNoFan: kilowattHours(heatToOutdoors(noFan.ledger, site)),
    collectedHeat: kilowattHours(ledger.collected),
    backupYear: backup.year,
    heaterNoFan: backupNoFan.year.heater,
    balanceResidual: balanceResidual(ledger),
    months: monthsOf(year, backup.year, backupNoFan.year),
    earlyYears: plain.map((early, k) => ({
      year: k + 1,
      heatIn: kilowattHours(early.heatIn),
      heatOut: kilowattHours(early.heatOut),
    })),
    yearsUntilPeriodic: yearsUntilPeriodic(plain.map((early) => early.heatOut), ledger.heatOut),
    floorHeat: kilowattHours(ledger.floor),
    outdoorHeat: -kilowattHours(outdoors),
    deepHeat: kilowattHours(site.deepHeld ? ledger.deep : 0),
    condensed: ledger.condensed,
    drained: ledger.drained,
    evaporated: ledger.evaporated,
    chargeHours: hoursOf(1),
    dischargeHours: hoursOf(-1),
    nightLift: nightLift(request, year.house, noFan.year),
    stateOfCharge: stateOfCharge(year),
    cutStates: {
      store: main.cutStates,
      storeHeated: heated.cutStates,
      noStore: noFan.cutStates,
      noStoreHeated: backupNoFan.cutStates,
    },
    emptying: main.emptying,
    freezing: main.freezing,
    coldestSoil: main.coldestSoil,
    cells: site.operator.capacity.length,
    slices: site.slices,
    states: store.slice.states,
  };
  return {
    ...judged,
    sections: main.sections,
    flows: heatFlows(judged),
    notices: storeNotices(judged, request, site.floorArea),
  };
}
