/** Fills what a study file leaves open, as opening the study does, without noting what was taken. @module */
import type { NoteDefault } from "../../basics/mod.ts";
import { completeFan } from "../../fan/defaults.ts";
import { FANS } from "../../fan/products.ts";
import type { FanCurve, FanInputs } from "../../fan/types.ts";
import { completeHeaders } from "../../headers/defaults.ts";
import type { HeadersInputs } from "../../headers/types.ts";
import { completeHouse } from "../../house/defaults.ts";
import type { HouseInputs } from "../../house/types.ts";
import { completeSoil } from "../../soil/defaults.ts";
import type { SoilInputs } from "../../soil/types.ts";
import type { StoreInputs } from "../../store/types.ts";
import { completeTubes } from "../../tubes/defaults.ts";
import type { TubesInputs } from "../../tubes/types.ts";
import type { GivenSections } from "../types.ts";

/** Inputs of the settled year with nothing left open. */
export interface CompletedSections {
  readonly soil: SoilInputs;
  readonly house: HouseInputs;
  readonly tubes: TubesInputs;
  readonly headers: HeadersInputs;
  readonly fan: FanInputs;
  readonly store: StoreInputs;
}

const unnoted: NoteDefault = (_key, given, otherwise) => given === undefined ? otherwise() : given;

/**
 * Fills the open inputs, each section's from itself and those before it.
 *
 * @param given sections of the study file
 * @param own fans of the study's own file, null where it names none
 */
export function completedSections(
  given: GivenSections,
  own: readonly FanCurve[] | null,
): CompletedSections {
  const soil = completeSoil(given.soil, {}, unnoted);
  const house = completeHouse(given.house, { soil }, unnoted);
  const tubes = completeTubes(given.tubes, { house }, unnoted);
  const headers = completeHeaders(given.headers, { tubes }, unnoted);
  const fans = { own, all: [...own ?? [], ...FANS] };
  const fan = completeFan(given.fan, { tubes, headers, fans }, unnoted);
  return { soil, house, tubes, headers, fan, store: given.store };
}
