/** Defaults of the soil section that follow from the texture. @module */
import type { NoteDefault } from "../basics/mod.ts";
import type { SoilGiven, SoilInputs, SoilLayerGiven, SoilLayerInputs } from "./fields.ts";
import { findSoil } from "./table.ts";

/** Fills what the section leaves open from what is typical of the texture. */
export function completeSoil(given: SoilGiven, _before: unknown, note: NoteDefault): SoilInputs {
  const typical = findSoil(given.texture);
  return {
    ...given,
    dryDensity: note("soil.dryDensity", given.dryDensity, () => typical.dryDensity),
    moisture: note("soil.moisture", given.moisture, () => typical.moisture),
    quartz: note("soil.quartz", given.quartz, () => typical.quartz),
    layers: given.layers.map((layer, index) => deriveLayer(layer, index, note)),
  };
}

function deriveLayer(given: SoilLayerGiven, index: number, note: NoteDefault): SoilLayerInputs {
  const typical = findSoil(given.texture);
  const filled = (name: "dryDensity" | "moisture" | "quartz") =>
    note(
      `soil.layers.${name}`,
      given[name],
      () => typical[name],
      `soil.layers.${index + 1}.${name}`,
    );
  return {
    ...given,
    dryDensity: filled("dryDensity"),
    moisture: filled("moisture"),
    quartz: filled("quartz"),
  };
}
