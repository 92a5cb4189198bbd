/** What tubes and floor feel of their own heat within one step. @module */
import type { StepPlan } from "./plan.ts";
import type { ReducedSlice } from "./slice.ts";

/** K per W/m of each tube's own block, mean over the step. */
export function tubeResponse(slice: ReducedSlice, plan: StepPlan): Float64Array {
  const { tubes, ports } = slice;
  return Float64Array.from({ length: tubes }, (_, p) => plan.response[p * ports + p]!);
}

/** The same between different tubes, tube·tubes + other, 0 on the diagonal. */
export function tubeCross(slice: ReducedSlice, plan: StepPlan): Float64Array {
  const { tubes, ports } = slice;
  return Float64Array.from({ length: tubes * tubes }, (_, k) => {
    const to = Math.floor(k / tubes);
    const other = k % tubes;
    return to === other ? 0 : plan.response[to * ports + other]!;
  });
}

/** W/(m K): heat into the floor for each K of driving temperature over the step. */
export function floorConductance(slice: ReducedSlice, plan: StepPlan): number {
  const { tubes, ports, conductances } = slice;
  return conductances[0] - plan.response[tubes * ports + tubes]!;
}
