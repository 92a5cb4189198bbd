/** What the reader of the soil chapter must be told. @module */
import { showBoth, showRange } from "../units/mod.ts";
import { notice } from "../basics/mod.ts";
import type { Notice } from "../basics/mod.ts";
import { listedLayerAt } from "./layers.ts";
import type { GroundDifference, SoilInputs, SoilProperties } from "./types.ts";

/** What the notices look at. */
export interface SoilNoticeFacts {
  /** `soil` section of the study */
  readonly inputs: SoilInputs;
  readonly properties: SoilProperties;
  /** m */
  readonly frostDepth: number;
  /** m */
  readonly tubeDepth: number;
  /** m, typical depth the column's snow reaches */
  readonly snowReached: number;
  readonly difference: GroundDifference;
}

/** m of frost that no single winter makes. */
const PERMANENT_FROST = 5;
/** K between the two estimates that is worth a word. */
const NOTABLE_DIFFERENCE = 1;

function waterNotices(inputs: SoilInputs, tubeDepth: number): Notice[] {
  const depth = inputs.waterTableDepth;
  if (depth === null) {
    return [notice(
      "warning",
      "soil",
      "The depth of the water table is not known: ask neighbours, check well records, and look for " +
        "mottling in the test pit. Moving groundwater carries stored heat away.",
    )];
  }
  if (depth >= tubeDepth + 1) return [];
  const where = depth <= tubeDepth ? "at or above the tubes" : "less than 1 m below the tubes";
  return [notice(
    "warning",
    "soil",
    `The water table at ${showBoth(depth, "length")} is ${where}: tubes may flood, and moving ` +
      "groundwater carries stored heat away; neither is modelled. Drain the site, raise the tubes or drop the store.",
  )];
}

function propertyNotices(inputs: SoilInputs, properties: SoilProperties): Notice[] {
  const found: Notice[] = [];
  if (inputs.measuredConductivity === null) {
    const [low, high] = properties.conductivityRange;
    found.push(notice(
      "info",
      "soil",
      `Conductivity is estimated at ${
        showBoth(properties.conductivity, "conductivity")
      }, plausible range ` +
        `${showRange(low, high, "conductivity")}; a needle-probe reading (ASTM D5334) narrows it.`,
    ));
  }
  if (inputs.texture === "peat") {
    found.push(notice(
      "warning",
      "soil",
      "Peat conducts poorly, settles and burns: heat reaches only a few centimetres around the tubes. " +
        "Replace it around the tubes or build elsewhere.",
    ));
  }
  if (inputs.texture === "gravel") {
    found.push(notice(
      "warning",
      "soil",
      "Air and water move through gravel and carry heat away in ways the conduction model does not " +
        "show, and dry gravel stores little. Use it for drainage below, with native soil around the tubes.",
    ));
  }
  return found;
}

function layerNotices(inputs: SoilInputs, tubeDepth: number): Notice[] {
  if ((inputs.layers ?? []).length === 0) return [];
  const layer = listedLayerAt(inputs, tubeDepth);
  return [
    notice(
      "info",
      "soil",
      "The layers listed are used in this chapter's undisturbed ground, in the store's slices and in the " +
        "house's own floor; the search for a tube field uses the soil of the section alone.",
    ),
    ...(layer === null ? [] : [notice(
      "info",
      "soil",
      `The tubes lie in a listed layer of ${layer.texture}: the store uses it, while the search for a tube ` +
        `field uses the section's ${inputs.texture}.`,
    )]),
  ];
}

/** Cautions and plausibility messages of the soil chapter. */
export function soilNotices(facts: SoilNoticeFacts): Notice[] {
  const { inputs, properties, frostDepth, tubeDepth } = facts;
  const found = [
    ...waterNotices(inputs, tubeDepth),
    ...propertyNotices(inputs, properties),
    ...layerNotices(inputs, tubeDepth),
  ];
  if (frostDepth > PERMANENT_FROST) {
    found.push(notice(
      "warning",
      "soil",
      "The ground stays frozen all year below the surface: if it thaws under a house, it " +
        "settles. Do not build a buried store here without a foundation engineer.",
    ));
  } else if (frostDepth > tubeDepth) {
    found.push(notice(
      "warning",
      "soil",
      "Undisturbed ground freezes below the tubes: insulate the edge of the house down to the " +
        "frost depth of the local code, and keep condensate drained.",
    ));
  }
  if (facts.snowReached < 0.8 * inputs.snowDepth) {
    found.push(notice(
      "warning",
      "soil",
      `The climate year is too warm to keep the stated ${showBoth(inputs.snowDepth, "depth")} ` +
        `of snow: ${showBoth(facts.snowReached, "depth")} is used. Check soil.snowDepth.`,
    ));
  }
  const gap = facts.difference.mean;
  if (Math.abs(gap) > NOTABLE_DIFFERENCE) {
    found.push(notice(
      "info",
      "soil",
      `The two estimates differ: at the tubes the column (sun, wind, evaporation, snow, frost) is ` +
        `${showBoth(Math.abs(gap), "temperatureDifference")} ${
          gap > 0 ? "warmer" : "colder"
        } on the annual mean than ` +
        "the wave from air temperature and snow alone. The column is used; compared with measured " +
        "ground temperature at 1 m it is good to about 1 K. A year of readings at the site would settle it.",
    ));
  }
  found.push(notice(
    "caution",
    "soil",
    "Before digging a test pit, have buried services located, and slope or shore every pit deeper than " +
      "the local trench rule allows, often 1.2 to 1.5 m (4 to 5 ft); nobody enters an unshored pit. The local building code's frost depth overrides the one computed here.",
  ));
  return found;
}
