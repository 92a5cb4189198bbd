/** The year's heat through the soil with the floor taken apart. @module */
import type { HeatFlow, StoreResult } from "../types.ts";

/**
 * Flows of the year with the floor taken apart: heat that goes down through it in some hours and
 * comes up in others. Their difference is the floor's flow in the chapter's result. Flows into the
 * soil come first.
 *
 * @param result flows, kWh, and hourly floor, W, of the store chapter
 */
export function yearFlows(
  result: Pick<StoreResult, "flows"> & { readonly year: { readonly floor: Float64Array } },
): HeatFlow[] {
  let down = 0;
  let up = 0;
  for (const watt of result.year.floor) {
    if (watt > 0) down += watt / 1000;
    else up -= watt / 1000;
  }
  const others = result.flows.filter((flow) => flow.from !== "floor" && flow.to !== "floor");
  const floor = [
    { from: "house floor, hours of warming", to: "soil", heat: down },
    { from: "soil", to: "house floor, hours of cooling", heat: up },
  ].filter((flow) => flow.heat > 0);
  const all = [...others, ...floor];
  return [
    ...all.filter((flow) => flow.to === "soil"),
    ...all.filter((flow) => flow.from === "soil"),
  ];
}
