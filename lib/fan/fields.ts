/** The `fan` section of the study file. @module */
import { type Fields, open, type Partly, quantity, text, whole } from "../basics/fields.ts";
import type { FanCurve } from "./curve.ts";

/** `fan` section of the study file, in SI. */
export interface FanInputs {
  /** curves of the user's own to choose from before those of data/fans; none where not given */
  readonly ownFans?: readonly FanCurve[] | undefined;
  /** id in data/fans */
  readonly fan: string;
  /** number of fans side by side */
  readonly count: number;
  /** speed over the rated speed, 0.2 to 1.2 */
  readonly speed: number;
  /** share of that speed while the store is charged, 0.2 to 1; absent: all of it */
  readonly chargeSpeed?: number | undefined;
  /** share of that speed while it is discharged, likewise */
  readonly dischargeSpeed?: number | undefined;
  /** riser, screen, elbows outside the tube field: velocity heads at the riser's diameter */
  readonly riserDiameter: number;
  /** velocity heads at the riser's diameter, elbows and screen included */
  readonly riserLosses: number;
  /** Pa of the filter or screen at the design flow, clean */
  readonly filterPressure: number;
  /** ratio of the pressure of the dirty filter to the clean one, at which the filter is changed */
  readonly filterDirty: number;
  /** price is kept in worth; here only the wire-to-air data */
  readonly note: string;
}

/** The section as given: these keys may still wait for their default. */
export type FanGiven =
  & Omit<Partly<FanInputs, "fan" | "count" | "riserDiameter">, "ownFans">
  & { readonly curves: string | undefined };

/** Keys of the section. */
export const fanFields: Fields<FanGiven> = {
  fan: open(text),
  curves: open(text),
  count: open(whole),
  speed: quantity,
  chargeSpeed: quantity,
  dischargeSpeed: quantity,
  riserDiameter: open(quantity),
  riserLosses: quantity,
  filterPressure: quantity,
  filterDirty: quantity,
  note: text,
};
