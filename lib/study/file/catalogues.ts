/** Ids a study may name; each finder throws an error that lists the known ids. @module */
import { findJunctions as junctions } from "../../headers/mod.ts";
import { findCrop as crop } from "../../house/crop/crop_table.ts";
import { findGlazing as glazing } from "../../house/skin/glazing_table.ts";
import { findWall } from "../../house/skin/walls.ts";
import { findTube as tube } from "../../tubes/mod.ts";

/** Finds a row of a catalogue. */
export type Finder = (id: string) => unknown;

/** Row of data/glazings. */
export const findGlazing: Finder = glazing;
/** Row of data/crops. */
export const findCrop: Finder = crop;
/** Row of data/tubes. */
export const findTube: Finder = tube;
/** Row of data/fittings/junctions.csv. */
export const findJunctions: Finder = junctions;
/** W/(m² K) of a row of data/walls/walls.csv. */
export function wallTransmittance(id: string): number {
  return findWall(id).heatTransmittance;
}
