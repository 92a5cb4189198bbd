/** How fine a store is computed, and what is made finer to see what that moves. @module */
import { PRODUCTION_MESH } from "./ground/mesh.ts";
import type { Fineness, StoreRequest } from "./request.ts";
import { YEAR_STEPS } from "./step_report.ts";

/** One thing made finer. */
export interface Refinement {
  /** what it is, such as "cells" */
  readonly name: string;
  /** what is done, in words */
  readonly change: string;
  /** the study with it made finer */
  readonly refine: (request: StoreRequest) => StoreRequest;
}

const withFineness = (request: StoreRequest, fineness: Fineness): StoreRequest => ({
  ...request,
  fineness: { ...request.fineness, ...fineness },
});

/** What a reviewer makes twice as fine, or as large, one at a time. */
export const REFINEMENTS: readonly Refinement[] = [
  {
    name: "cells",
    change: "bounds on the width of soil cells halved, and half their growth",
    refine: (request) => {
      const { tubeCell, nearCell, nearGrowth, growth, surfaceCell, largestCell } =
        request.fineness?.mesh ?? PRODUCTION_MESH;
      return withFineness(request, {
        mesh: {
          tubeCell: tubeCell / 2,
          nearCell: nearCell / 2,
          nearGrowth: Math.sqrt(nearGrowth),
          growth: Math.sqrt(growth),
          surfaceCell: surfaceCell / 2,
          largestCell: largestCell / 2,
        },
      });
    },
  },
  {
    name: "steps",
    change: "steps in time half as long",
    refine: (request) => {
      const steps = request.fineness?.steps ?? YEAR_STEPS;
      return withFineness(request, { steps: steps.map((step) => step / 2) });
    },
  },
  {
    name: "slices",
    change: "twice as many slices along the tubes",
    refine: (request) => ({
      ...request,
      inputs: { ...request.inputs, slices: 2 * request.inputs.slices },
    }),
  },
  {
    name: "domain",
    change: "twice as much soil beside the house and below it",
    refine: (request) => ({
      ...request,
      inputs: {
        ...request.inputs,
        outsideSoil: 2 * request.inputs.outsideSoil,
        meshDepth: 2 * request.inputs.meshDepth,
      },
    }),
  },
];
