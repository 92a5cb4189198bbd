/** What the drawings take of a study. @module */
import type { FieldInputs } from "../headers/mod.ts";
import type { UnitSystem } from "../units/mod.ts";

/** What the drawings need of a study. */
export interface DrawingInputs extends FieldInputs {
  /** title of the study */
  readonly title: string;
  /** units of the lengths on the sheets */
  readonly units: UnitSystem;
  /** inside diameter of the riser, m */
  readonly riserDiameter: number;
  /** fans side by side, one riser each */
  readonly fans: number;
  /** depth of the undisturbed frost, m */
  readonly frostDepth: number;
  /** highest water table below the floor, m; null where unknown */
  readonly waterTableDepth: number | null;
}
