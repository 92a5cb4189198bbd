/** Defaults that follow from other inputs keep to the limits of their keys too. @module */
import { InputError } from "../../basics/mod.ts";
import { formatQuantity, parseQuantity } from "../../units/mod.ts";
import type { deriveDefaults } from "./derive.ts";
import { fieldKind, fieldRow, valueAt } from "./fields.ts";
import { placeOf, type YamlSource } from "./yaml_source.ts";

/** Share by which a default may miss a limit: rounding. */
const SLACK = 1e-9;

/**
 * Defaults that other inputs drive beyond the limits of their key: a house of a metre has no room for
 * tubes.
 *
 * @param derived inputs with nothing left open, and the defaults taken
 * @param source the study file
 */
export function derivedFaults(
  { inputs, taken }: ReturnType<typeof deriveDefaults>,
  source: YamlSource,
): readonly InputError[] {
  return taken.flatMap(({ key, source: rule }): InputError[] => {
    const { kind, least, most } = fieldRow(withoutPlaces(key));
    const value = valueAt(inputs, key);
    if (kind === "text" || typeof value !== "number" || least === "" || most === "") return [];
    const [low, high] = [parseQuantity(least, kind), parseQuantity(most, kind)];
    const slack = SLACK * Math.abs(value);
    if (value >= low - slack && value <= high + slack) return [];
    const shown = formatQuantity(value, fieldKind(withoutPlaces(key)));
    return [
      new InputError(
        `"${key}" is not given and would follow from the other inputs as ${shown} (${rule}), but must ` +
          `lie between ${least} and ${most}: give it, or change what it follows from`,
        placeOf(key.split("."), source),
      ),
    ];
  });
}

/** The key without places in lists, under which the table of fields knows it. */
function withoutPlaces(key: string): string {
  return key.split(".").filter((part) => !/^\d+$/.test(part)).join(".");
}
