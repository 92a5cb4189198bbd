/** The soil's heat ledger of a year. @module */
import type { HouseFlows } from "../../house/types.ts";
import type { FanMode } from "../control.ts";
import type { SoilEngine } from "../solver/engine.ts";
import type { StoreSite } from "../site.ts";

/** Heat of one year, J; positive into the soil unless the name says out. */
export interface SoilLedger {
  /** net heat of the charging hours into the walls, and of the discharging hours out of them */
  heatIn: number;
  heatOut: number;
  /** latent part of both */
  latentIn: number;
  latentOut: number;
  /** through the floor, the surface outside and the deep end */
  floor: number;
  outdoor: number;
  deep: number;
  /** change of the soil's content, at the end of the year */
  gained: number;
  /** sum of all flows without sign: what the residual is measured by */
  throughput: number;
  /** by quarter of the year */
  readonly inByQuarter: Float64Array;
  readonly outByQuarter: Float64Array;
  /** J of electricity */
  fanEnergy: number;
  /** J that a plate collector gave the charging air */
  collected: number;
  /** J of back-up heat */
  heater: number;
  /** kg: evaporated in the house, condensed in the tubes, drained from the tubes */
  evaporated: number;
  condensed: number;
  drained: number;
}

/** Index of the quarter of the year an hour lies in, 0 to 3: January to March first. */
export function quarterOf(hour: number): number {
  const day = Math.floor(hour / 24);
  return day < 90 ? 0 : day < 181 ? 1 : day < 273 ? 2 : 3;
}

/** Heat content of all the soil, J over 0 °C. */
function contentOf(site: StoreSite, engine: SoilEngine): number {
  const content = engine.content();
  let held = 0;
  for (let lane = 0; lane < engine.lanes; lane++) held += content[lane]! * site.lengths[lane]!;
  return held;
}

/** A ledger at the start of a year; `gained` holds minus the content until it is closed. */
export function openLedger(site: StoreSite, engine: SoilEngine): SoilLedger {
  const held = contentOf(site, engine);
  return {
    heatIn: 0,
    heatOut: 0,
    latentIn: 0,
    latentOut: 0,
    floor: 0,
    outdoor: 0,
    deep: 0,
    gained: -held,
    throughput: 0,
    inByQuarter: new Float64Array(4),
    outByQuarter: new Float64Array(4),
    fanEnergy: 0,
    collected: 0,
    heater: 0,
    evaporated: 0,
    condensed: 0,
    drained: 0,
  };
}

/** Ends a year: `gained` becomes the change of content. */
export function closeLedger(ledger: SoilLedger, site: StoreSite, engine: SoilEngine): void {
  ledger.gained += contentOf(site, engine);
}

/** One step's flows, W into the soil unless said. */
export interface BookedStep {
  readonly hour: number;
  readonly mode: FanMode;
  readonly seconds: number;
  readonly sensible: number;
  readonly latent: number;
  readonly floor: number;
  readonly outdoor: number;
  readonly deep: number;
  /** kg/s to the air */
  readonly vapour: number;
  /** W that a plate collector gave the charging air, and W electric of the fan */
  readonly collected: number;
  readonly fanPower: number;
  readonly house: Pick<HouseFlows, "heater" | "evaporated">;
}

/** Adds a step to the books. */
export function bookStep(ledger: SoilLedger, step: BookedStep): void {
  const { mode, seconds, sensible, latent, floor, outdoor, deep } = step;
  const into = (sensible + latent) * seconds;
  if (mode === 1) {
    ledger.heatIn += into;
    ledger.latentIn += latent * seconds;
    ledger.inByQuarter[quarterOf(step.hour)]! += into;
  } else if (mode === -1) {
    ledger.heatOut -= into;
    ledger.latentOut -= latent * seconds;
    ledger.outByQuarter[quarterOf(step.hour)]! -= into;
  }
  ledger.floor += floor * seconds;
  ledger.outdoor += outdoor * seconds;
  ledger.deep += deep * seconds;
  ledger.throughput += (Math.abs(sensible + latent) + Math.abs(floor) + Math.abs(outdoor) +
    Math.abs(deep)) * seconds;
  ledger.fanEnergy += step.fanPower * seconds;
  ledger.collected += step.collected * seconds;
  ledger.heater += step.house.heater * seconds;
  ledger.evaporated += step.house.evaporated * seconds;
  ledger.condensed -= Math.min(0, step.vapour) * seconds;
}

/** (in − out + floor + outdoor + deep − gained)/throughput: 0 but for rounding. */
export function balanceResidual(ledger: SoilLedger): number {
  const rest = ledger.heatIn - ledger.heatOut + ledger.floor + ledger.outdoor + ledger.deep -
    ledger.gained;
  return ledger.throughput > 0 ? rest / ledger.throughput : 0;
}
