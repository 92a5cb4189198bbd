/** The fan chapter tried with a change, which may fail. @module */
import { InputError } from "../basics/mod.ts";
import { fanChapter, type FanSurroundings } from "./compute.ts";
import { type SummarisedFan, summariseFan } from "./summary.ts";
import type { FanInputs } from "./types.ts";

/** One trial: a result, or the sentence that says why there is none. */
export interface FanTrial {
  /** what was tried */
  readonly name: string;
  /** the fan chapter; null where the fans do not meet the field */
  readonly result: SummarisedFan | null;
  /** why there is none; empty where there is one */
  readonly reason: string;
}

/**
 * The fan chapter, or why it gives no point.
 *
 * @param name what is tried
 * @param inputs `fan` section with the change made
 * @param surroundings tubes, headers and air
 */
export function fanTrial(
  name: string,
  inputs: FanInputs,
  surroundings: FanSurroundings,
): FanTrial {
  try {
    const result = summariseFan(inputs, fanChapter(inputs, surroundings));
    return { name, result, reason: "" };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { name, result: null, reason: error.message };
  }
}
