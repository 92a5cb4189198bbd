/** The `headers` section of the study file. @module */
import {
  choice,
  type Fields,
  id,
  open,
  type Partly,
  quantity,
  quantityOr,
  whole,
} from "../basics/fields.ts";
import { findJunctions } from "./junctions.ts";

/** Where the air enters the supply header and leaves the return header. */
export type HeaderLayout = "Z" | "U" | "centre" | "two-ended";

/** How the tube meets the header. */
export type TubeInlet = "flush" | "protruding" | "rounded";

/** `headers` section of the study file, in SI. */
export interface HeadersInputs {
  /** where the air enters and leaves */
  readonly layout: HeaderLayout;
  /** inside, m */
  readonly diameter: number;
  /** inside diameter of the return header, m */
  readonly returnDiameter: number;
  /** m, sand roughness, or Manning n for corrugated headers */
  readonly roughness: number;
  /** Manning coefficient of a corrugated header, s/m^(1/3); null for a smooth one */
  readonly manning: number | null;
  /** how the tube meets the header */
  readonly inlet: TubeInlet;
  /** m that a protruding tube reaches into the header */
  readonly insertion: number;
  /** number of separate header pairs the tubes are split over (for instance one a layer) */
  readonly groups: number;
  /** ratio of the far-end diameter to the fed-end diameter of a tapered header; 1 for a straight one */
  readonly taper: number;
  /** id in data/fittings/junctions.csv */
  readonly junctions: string;
}

/** The section as given: these keys may still wait for their default. */
export type HeadersGiven = Partly<HeadersInputs, "diameter" | "returnDiameter" | "groups">;

/** Keys of the section. */
export const headersFields: Fields<HeadersGiven> = {
  layout: choice("Z", "U", "centre", "two-ended"),
  diameter: open(quantity),
  returnDiameter: open(quantity),
  roughness: quantity,
  manning: quantityOr("none", null),
  inlet: choice("flush", "protruding", "rounded"),
  insertion: quantity,
  groups: open(whole),
  taper: quantity,
  junctions: id(findJunctions),
};
