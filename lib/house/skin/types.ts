/** Surfaces of the house. @module */
import type { Plane } from "../../sun/types.ts";
import type { Outline } from "./outline.ts";

/** One surface of the skin. */
export interface SkinPart {
  /** which wall or roof it belongs to, seen from the glazed long side, the front */
  readonly side: "front" | "back" | "left" | "right";
  /** what it is; a knee wall is the solid strip below a glazed wall */
  readonly element: "wall" | "knee wall" | "roof";
  /** name for the reader; nothing is decided by it */
  readonly name: string;
  /** lets light through or not */
  readonly kind: "glazed" | "opaque";
  /** m² */
  readonly area: number;
  /** orientation of the surface */
  readonly plane: Plane;
  /** its corners, m; a hoop's strips are flat between theirs, so their area is a little less */
  readonly outline: Outline;
  /** W/(m² K), curtain open */
  readonly transmittanceHeat: number;
}

/** Geometry worked out from the inputs. */
export interface HouseGeometry {
  /** surfaces of the skin */
  readonly parts: readonly SkinPart[];
  /** m² */
  readonly floorArea: number;
  /** corners of the floor, m */
  readonly floorOutline: Outline;
  /** m³ */
  readonly volume: number;
  /** m around the floor */
  readonly perimeter: number;
}
