/** The year's heat as flows between places, for a flow picture. @module */
import type { HeatFlow, StoreResult } from "../types.ts";

/** Names of the places. */
const PLACES = {
  sensible: "sensible heat of house air",
  latent: "condensing vapour",
  floor: "floor",
  soil: "soil",
  ground: "ground outside and below",
  air: "house air",
  vapour: "vapour to the house",
} as const;

/** Flows of the year, kWh, each positive in its direction; they balance at the soil. */
export function heatFlows(
  store: Pick<
    StoreResult,
    | "heatIn"
    | "heatOut"
    | "latentIn"
    | "latentOut"
    | "floorHeat"
    | "outdoorHeat"
    | "deepHeat"
  >,
): HeatFlow[] {
  const flows: HeatFlow[] = [];
  const add = (from: string, to: string, heat: number) => {
    if (heat > 0) flows.push({ from, to, heat });
    else if (heat < 0) flows.push({ from: to, to: from, heat: -heat });
  };
  add(PLACES.sensible, PLACES.soil, store.heatIn - store.latentIn);
  add(PLACES.latent, PLACES.soil, store.latentIn);
  add(PLACES.floor, PLACES.soil, store.floorHeat);
  add(PLACES.soil, PLACES.ground, -store.outdoorHeat - store.deepHeat);
  add(PLACES.soil, PLACES.air, store.heatOut - store.latentOut);
  add(PLACES.soil, PLACES.vapour, store.latentOut);
  return flows;
}
