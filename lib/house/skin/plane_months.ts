/** Radiation on the glazed planes of the house, month by month. @module */
import { HOUR, kilowattHours, monthlySums } from "../../basics/mod.ts";
import { type ClimateYear, groundAlbedo } from "../../climate/mod.ts";
import {
  type Horizon,
  hourlySun,
  type Plane,
  type PlaneRadiation,
  planeRadiation,
  planeTotal,
} from "../../sun/mod.ts";
import { houseGeometry } from "./geometry.ts";
import type { HouseInputs } from "../types.ts";

/** Radiation on one plane in one month, kWh/m² of the plane. */
export interface PlaneMonth {
  /** the sky with a bright disc around the sun (Hay & Davies), behind the skyline; what the house uses */
  readonly hayDavies: number;
  /** the sky evenly bright, behind the skyline */
  readonly isotropic: number;
  /** as the first, on an open site */
  readonly open: number;
}

/** A glazed plane and its twelve months. */
export interface PlaneMonths {
  /** parts of the house in this plane */
  readonly name: string;
  /** orientation */
  readonly plane: Plane;
  /** m² of glazing in it */
  readonly area: number;
  /** January first */
  readonly months: readonly PlaneMonth[];
}

function monthlyTotals(radiation: PlaneRadiation): number[] {
  return monthlySums(planeTotal(radiation)).map((total) => kilowattHours(total * HOUR));
}

/**
 * Monthly radiation on every glazed plane of a house, by both models of the sky and with and without
 * the skyline of the place.
 *
 * @param inputs house
 * @param climate year, with its place
 * @returns one entry a plane, steepest first
 */
export function glazedPlaneMonths(inputs: HouseInputs, climate: ClimateYear): PlaneMonths[] {
  const sun = hourlySun(climate.place);
  const albedo = groundAlbedo(climate);
  const { horizon } = climate.place;
  return glazedPlanes(inputs).map((entry) => {
    const { plane } = entry;
    const months = (model: "hay-davies" | "isotropic", skyline?: Horizon) =>
      monthlyTotals(planeRadiation({
        climate,
        sun,
        plane,
        albedo,
        model,
        ...(skyline === undefined || skyline.length === 0 ? {} : { horizon: skyline }),
      }));
    const [hayDavies, isotropic] = [months("hay-davies", horizon), months("isotropic", horizon)];
    const open = months("hay-davies");
    return {
      ...entry,
      months: open.map((value, month) => ({
        hayDavies: hayDavies[month]!,
        isotropic: isotropic[month]!,
        open: value,
      })),
    };
  });
}

/** Glazed parts of the house, those in one plane together. */
function glazedPlanes(inputs: HouseInputs): Omit<PlaneMonths, "months">[] {
  const found = new Map<string, Omit<PlaneMonths, "months">>();
  for (const part of houseGeometry(inputs).parts) {
    if (part.kind !== "glazed") continue;
    const key = `${part.plane.tilt} ${part.plane.azimuth}`;
    const known = found.get(key);
    found.set(key, {
      name: known === undefined ? part.name : `${known.name}, ${part.name}`,
      plane: part.plane,
      area: (known?.area ?? 0) + part.area,
    });
  }
  return [...found.values()].sort((a, b) =>
    b.plane.tilt - a.plane.tilt || a.plane.azimuth - b.plane.azimuth
  );
}
