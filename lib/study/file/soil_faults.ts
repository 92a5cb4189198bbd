/** Soils that cannot be: more water than pores, a density of no such soil. @module */
import { InputError, OutOfRangeError } from "../../basics/mod.ts";
import { type SoilInputs, type SoilMake, soilProperties } from "../../soil/mod.ts";
import type { KeyPath, YamlSource } from "./yaml_source.ts";

/**
 * Faults of the soil of the section and of each layer, with the line of the key to change.
 *
 * @param soil section with nothing left open
 * @param source the study file
 */
export function soilFaults(soil: SoilInputs, source: YamlSource): readonly InputError[] {
  const { frozenConductivity, layers = [] } = soil;
  return [
    ...faultOf(soil, ["soil"], source),
    ...layers.flatMap((layer, index) =>
      faultOf({ ...layer, frozenConductivity }, ["soil", "layers", index], source)
    ),
  ];
}

function faultOf(make: SoilMake, path: KeyPath, source: YamlSource): InputError[] {
  try {
    soilProperties(make);
    return [];
  } catch (error) {
    if (!(error instanceof InputError || error instanceof OutOfRangeError)) throw error;
    const keys = error instanceof InputError
      ? ["moisture", "dryDensity", "texture"]
      : ["dryDensity", "texture"];
    const key = keys.find((name) => source.has([...path, name])) ?? "texture";
    return [new InputError(error.message, source.locate([...path, key]))];
  }
}
