/** The `place` and `climate` sections of the study file. @module */
import {
  type Fields,
  list,
  open,
  quantity,
  text,
  timeZone,
  whole,
  yesNo,
} from "../basics/fields.ts";
import type { Horizon, HorizonPoint } from "../sun/mod.ts";
import type { Place } from "./types.ts";

/** Place as given; an open skyline is an empty one. */
export type PlaceGiven = Omit<Place, "horizon"> & { readonly horizon: Horizon };

/** Where the year comes from, paths as written. */
export interface ClimateGiven {
  /** hourly weather file */
  readonly file: string | undefined;
  /** columns file that says how to read it */
  readonly columns: string | undefined;
  /** table of twelve monthly normals */
  readonly normals: string | undefined;
  /** which invented year is made from the normals */
  readonly seed: number;
  /** true where radiation that certainly stands in the wrong hours is moved back */
  readonly mendShift: boolean;
  /** measured years that follow one another, the oldest first, paths as written; read like `file` */
  readonly measuredYears: readonly MeasuredYear[];
}

/** A measured year of the odds. */
export interface MeasuredYear {
  /** hourly weather file */
  readonly file: string;
}

const horizonFields: Fields<HorizonPoint> = { azimuth: quantity, elevation: quantity };

/** Keys of the section `place`. */
export const placeFields: Fields<PlaceGiven> = {
  name: text,
  latitude: quantity,
  longitude: quantity,
  elevation: quantity,
  timeZone,
  horizon: list(horizonFields),
};

/** Keys of the section `climate`. */
export const climateFields: Fields<ClimateGiven> = {
  file: open(text),
  columns: open(text),
  normals: open(text),
  seed: whole,
  mendShift: yesNo,
  measuredYears: list({ file: text }),
};
