/** What the take-off takes and gives. @module */
import type { FieldInputs } from "../../headers/mod.ts";
import type { PlateCollector } from "../../store/mod.ts";

/** Which part of the work a quantity belongs to. */
export type WorkPart =
  | "tubes and headers"
  | "pit"
  | "air and control"
  | "water and alarm"
  | "labour"
  | "papers"
  | "house";

/** One row of the take-off. */
export interface MaterialQuantity {
  /** id under which the price list holds its price */
  readonly id: string;
  /** part of the work */
  readonly part: WorkPart;
  /** what is bought */
  readonly item: string;
  /** net amount from the drawing, in the same unit as `unit` names */
  readonly amount: number;
  /** unit of the value */
  readonly unit: string;
  /** amount to order, with waste, in the same unit */
  readonly order: number;
  /** how it was worked out */
  readonly basis: string;
}

/** What the take-off needs of a study. */
export interface TakeOffInputs extends FieldInputs {
  /** inside diameter of the riser, m */
  readonly riserDiameter: number;
  /** count of fans side by side, one riser each */
  readonly fans: number;
  /** id and name of the fan */
  readonly fan: { readonly id: string; readonly name: string };
  /** m of a coil as it is sold; null where tube is sold by the metre */
  readonly coilLength: number | null;
  /** m of gravel beyond the outermost tube centres on all sides; null without a gravel bed */
  readonly gravelMargin: number | null;
  /** m² K/W of a flat board below the tubes; null without one */
  readonly flatBoard: number | null;
  /** place, m² of plate and m of duct outdoors of a plate collector; null without one */
  readonly collector: Pick<PlateCollector, "place" | "area" | "ductLength"> | null;
}
