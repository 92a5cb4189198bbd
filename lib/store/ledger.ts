/** The soil's heat ledger of a year. @module */
import type { SoilEngine } from "./engine.ts";
import type { StoreSite } from "./site.ts";

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
  fanSeconds: number;
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

/** A ledger at the start of a year; `gained` holds minus the content until the year ends. */
export function emptyLedger(site: StoreSite, engine: SoilEngine): SoilLedger {
  const content = engine.content();
  let held = 0;
  for (let lane = 0; lane < engine.lanes; lane++) held += content[lane]! * site.lengths[lane]!;
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
    fanSeconds: 0,
    heater: 0,
    evaporated: 0,
    condensed: 0,
    drained: 0,
  };
}

/** (in − out + floor + outdoor + deep − gained)/throughput: 0 but for rounding. */
export function balanceResidual(ledger: SoilLedger): number {
  const rest = ledger.heatIn - ledger.heatOut + ledger.floor + ledger.outdoor + ledger.deep -
    ledger.gained;
  return ledger.throughput > 0 ? rest / ledger.throughput : 0;
}
