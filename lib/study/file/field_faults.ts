/**
 * Fields of tubes, headers and fans that no air flows through as asked: found by their own short sums
 * before a year is computed.
 *
 * @module
 */
import { InputError, NotConvergedError, OutOfRangeError } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import { fan } from "../../fan/chapter.ts";
import { headers } from "../../headers/chapter.ts";
import { suctionFault } from "../../store/mod.ts";
import { tubes } from "../../tubes/chapter.ts";
import type { ChapterInputs } from "./derive.ts";
import { type KeyPath, placeOf, type YamlSource } from "./yaml_source.ts";

/**
 * What keeps tubes, headers and fans from working together.
 *
 * @param inputs of every chapter
 * @param climate weather of the year
 * @param source the study file
 * @returns the first fault, with the line of its section; none where all work
 */
export function fieldFaults(
  inputs: ChapterInputs,
  climate: ClimateYear,
  source: YamlSource,
): readonly InputError[] {
  const study = { ...inputs, climate };
  let path: KeyPath = ["tubes", "tube"];
  try {
    const one = tubes.compute(tubes.takes(study, {}));
    path = ["headers", "diameter"];
    const pairs = headers.compute(headers.takes(study, { tubes: one }));
    path = ["fan", "fan"];
    const point = fan.compute(fan.takes(study, { headers: pairs }));
    const { collector } = inputs.store;
    const suction = collector && suctionFault(collector.area, point.charge.airFlow);
    if (suction) return [new InputError(suction, placeOf(["store", "collector", "area"], source))];
    if (point.airFlow > 0) return [];
    return [
      new InputError(
        "The fans move no air at all against this field: choose a stronger fan or larger headers",
        placeOf(path, source),
      ),
    ];
  } catch (error) {
    if (!isFault(error)) throw error;
    return [new InputError(error.message, placeOf(path, source))];
  }
}

function isFault(error: unknown): error is Error {
  return [InputError, OutOfRangeError, NotConvergedError].some((kind) => error instanceof kind);
}
