/** Soil, boards and groundwater of a study as the mesh and its operator need them. @module */
import { WING_DEPTH } from "../../house/mod.ts";
import { studyLayers } from "../../soil/mod.ts";
import type { StoreRequest } from "../request.ts";
import type { SoilBoard, SoilZone } from "./operator.ts";

/** Insulation in the soil. */
export function boards(request: StoreRequest): SoilBoard[] {
  const { houseInputs, inputs } = request;
  const found: SoilBoard[] = [];
  if (houseInputs.edgeInsulation > 0 && houseInputs.edgeInsulationDepth > 0) {
    found.push({
      kind: "edge",
      depth: houseInputs.edgeInsulationDepth,
      resistance: houseInputs.edgeInsulation,
    });
  }
  const wing = houseInputs.edgeInsulationWing ?? 0;
  if (houseInputs.edgeInsulation > 0 && wing > 0) {
    const upright = houseInputs.edgeInsulationDepth;
    found.push({
      kind: "wing",
      depth: upright > 0 ? upright : WING_DEPTH,
      resistance: houseInputs.edgeInsulation,
      width: wing,
    });
  }
  if ((inputs.flatBoardResistance ?? 0) > 0 && (inputs.flatBoardDepth ?? 0) > 0) {
    found.push({
      kind: "flat",
      depth: inputs.flatBoardDepth!,
      resistance: inputs.flatBoardResistance!,
    });
  }
  return found;
}

/** Soils by depth as the soil chapter has them, and the bed around the tubes where there is one. */
export function soilZones(request: StoreRequest): SoilZone[] {
  const zones: SoilZone[] = [];
  let top = 0;
  for (const { thickness, properties } of studyLayers(request.soilInputs)) {
    zones.push({
      within: Infinity,
      from: top,
      to: top + thickness,
      conductivity: properties.conductivity,
      heatCapacity: properties.heatCapacity,
      freezing: properties,
    });
    top += thickness;
  }
  const bed = request.inputs.gravelBed;
  if (bed === undefined) return zones;
  const depths = request.tubes.positions.map((tube) => tube.depth);
  return [...zones, {
    within: Math.max(...request.tubes.positions.map((tube) => Math.abs(tube.x))) + bed.margin,
    from: Math.min(...depths) - bed.margin,
    to: Math.max(...depths) + bed.margin,
    conductivity: bed.conductivity,
    heatCapacity: bed.heatCapacity,
  }];
}

/** m, centre of the lowest tube. */
export function lowestTube(tubes: StoreRequest["tubes"]): number {
  return Math.max(...tubes.positions.map((tube) => tube.depth));
}

/** Lower end of the mesh: at moving groundwater, where it lies below the tubes, held; else free. */
export function lowerEnd(
  request: StoreRequest,
): { readonly depth: number; readonly held: boolean } {
  const { inputs, tubes } = request;
  const waterTable = request.soilInputs.waterTableDepth;
  const held = inputs.groundWaterMoves === true && waterTable !== null &&
    waterTable > lowestTube(tubes) + 0.5 &&
    waterTable < inputs.meshDepth;
  return { depth: held ? waterTable : inputs.meshDepth, held };
}
