/** The exercises of all chapters, found by their id. @module */
import { EXERCISES as study } from "./study/exercises.ts";
import { EXERCISES as climate } from "./climate/exercises.ts";
import { EXERCISES as soil } from "./soil/exercises.ts";
import { EXERCISES as house } from "./house/exercises.ts";
import { EXERCISES as tubes } from "./tubes/exercises.ts";
import { EXERCISES as headers } from "./headers/exercises.ts";
import { EXERCISES as fan } from "./fan/exercises.ts";
import { EXERCISES as store } from "./store/exercises.ts";
import { EXERCISES as worth } from "./worth/exercises.ts";
import { EXERCISES as measured } from "./measured/exercises.ts";
import { HELP } from "./exercise_help.ts";
import { type Exercise, exerciseItem } from "./kit/exercise.ts";
import type { DisplayItem } from "./kit/figure.ts";

/** All exercises with their hints and solutions, in the order of the notebooks. */
export const EXERCISES: readonly Exercise[] = [
  ...study,
  ...climate,
  ...soil,
  ...house,
  ...tubes,
  ...headers,
  ...fan,
  ...store,
  ...worth,
  ...measured,
].map((one) => ({ ...one, ...HELP[one.id] }));

/**
 * Shows an exercise and checks the answer given.
 *
 * @param id such as "soil.penetration"
 * @param given the answer with its unit, or null while it is open
 * @throws {RangeError} for an unknown id; the message lists the known ones
 */
export function exercise(id: string, given: string | number | null): DisplayItem {
  const found = EXERCISES.find((one) => one.id === id);
  if (found === undefined) {
    const known = EXERCISES.map((one) => one.id).join(", ");
    throw new RangeError(`Cannot find exercise "${id}": the known ones are ${known}`);
  }
  return exerciseItem(found, given);
}
