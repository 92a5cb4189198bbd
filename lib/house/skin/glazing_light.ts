/** The light on and through the glazing of a house. @module */
import { sum } from "d3-array";
import type { ClimateYear } from "../../climate/types.ts";
import { beamTransmittance, diffuseTransmittance } from "../../sun/mod.ts";
import type { HouseInputs } from "../types.ts";
import { lightByMonth, type LightMonth } from "./light_by_month.ts";
import { findGlazing, type Glazing } from "./glazing_table.ts";
import { glazedPlaneMonths, type PlaneMonth, type PlaneMonths } from "./plane_months.ts";
import { glazingOptics } from "./solar_gain.ts";

/** One glazed plane, or all of them, by month, with its sums. */
export interface PlaneLight extends PlaneMonths {
  /** kWh/m² a year */
  readonly year: PlaneMonth;
  /** kWh/m² from December to February */
  readonly winter: PlaneMonth;
}

/** Radiation on the glazing of a house. */
export interface GlazedPlanes {
  /** plane by plane, steepest first */
  readonly planes: readonly PlaneLight[];
  /** mean of all glazing by area; its plane means nothing */
  readonly all: PlaneLight;
  /** share of the light on all glazing from December to February that the skyline takes, 0 to 1 */
  readonly winterTaken: number;
}

const WINTER = [11, 0, 1];
const KINDS = ["hayDavies", "isotropic", "open"] as const;

function over(value: (kind: keyof PlaneMonth) => number): PlaneMonth {
  const [hayDavies, isotropic, open] = KINDS.map(value);
  return { hayDavies: hayDavies!, isotropic: isotropic!, open: open! };
}

function withSums(plane: PlaneMonths): PlaneLight {
  return {
    ...plane,
    year: over((kind) => sum(plane.months, (month) => month[kind])),
    winter: over((kind) => sum(WINTER, (month) => plane.months[month]![kind])),
  };
}

/**
 * Sums of the glazed planes, and all glazing together.
 *
 * @param months radiation on each plane, kWh/m² a month, and its area, m²
 */
export function glazedPlanes(months: readonly PlaneMonths[]): GlazedPlanes {
  const area = sum(months, (plane) => plane.area);
  const all = withSums({
    name: "area-weighted mean of all glazing",
    plane: { tilt: 0, azimuth: 0 },
    area,
    months: Array.from(
      { length: 12 },
      (_, month) =>
        over((kind) => sum(months, (plane) => plane.area * plane.months[month]![kind]) / area),
    ),
  });
  return {
    planes: months.map(withSums),
    all,
    winterTaken: 1 - all.winter.hayDavies / all.winter.open,
  };
}

/** What one glazing lets through, clean sheets alone. */
export interface GlazingAngles {
  /** row of `data/glazings` */
  readonly glazing: Glazing;
  /** share of the beam let through at each of `ANGLES`, 0 to 1 */
  readonly beam: readonly number[];
  /** share of even diffuse light let through, 0 to 1 */
  readonly diffuse: number;
}

/** degrees from the normal, every one, 0 to 90 */
export const ANGLES: readonly number[] = Array.from({ length: 91 }, (_, angle) => angle);

/**
 * Share of light that a glazing lets through at each angle.
 *
 * @param glazing row of `data/glazings`
 */
export function glazingAngles(glazing: Glazing): GlazingAngles {
  const optics = glazingOptics(glazing);
  return {
    glazing,
    beam: ANGLES.map((angle) => beamTransmittance(optics, angle)),
    diffuse: diffuseTransmittance(optics),
  };
}

/** Light on the glazed planes, and glazings side by side, the study's own first. */
export interface GlazingLight extends GlazedPlanes {
  /** the study's own glazing, then common ones */
  readonly angles: readonly GlazingAngles[];
  /** where the light let in ends, month by month */
  readonly inside: readonly LightMonth[];
}

/** Glazings shown beside the study's own. */
const BESIDE = ["single-glass", "double-glass", "twin-wall-8mm"];

/**
 * Light on and through the glazing of a house.
 *
 * @param inputs house section of the study
 * @param climate year, with its place and skyline
 */
export function glazingLight(inputs: HouseInputs, climate: ClimateYear): GlazingLight {
  const ids = [inputs.glazing, ...BESIDE.filter((id) => id !== inputs.glazing)];
  return {
    ...glazedPlanes(glazedPlaneMonths(inputs, climate)),
    angles: ids.map((id) => glazingAngles(findGlazing(id))),
    inside: lightByMonth(inputs, climate),
  };
}
