/** The first group of tubes of a study, on which variants are tried. @module */
import type { TubesResult } from "../tubes/mod.ts";
import type { HeaderGroup } from "./build.ts";
import { type AirState, headerGroups } from "./compute.ts";
import type { HeadersInputs } from "./types.ts";

/** Headers of a study with its tubes and air. */
export interface HeadersQuestion {
  /** `headers` section of the study */
  readonly inputs: HeadersInputs;
  /** result of the tubes chapter */
  readonly tubes: TubesResult;
  /** Pa and degC of the air */
  readonly state: AirState;
}

/**
 * First group of tubes in a layout, and its design air flow, m³/s.
 *
 * @param question headers, tubes and air
 * @param layout how the group is fed; as in the study unless given
 */
export function firstGroup(
  { inputs, tubes, state }: HeadersQuestion,
  layout = inputs.layout,
): { readonly group: HeaderGroup; readonly airFlow: number } {
  const { group, members } = headerGroups({ ...inputs, layout }, tubes, state)[0]!;
  return { group, airFlow: tubes.flowPerTube * members.length };
}
