/** The chapters before the store, in the order of the job, as far as its year hangs on them. @module */
import type { Notice } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import { fanChapter } from "../../fan/compute.ts";
import { fanTaken } from "../../fan/takes.ts";
import { headersInPit } from "../../headers/in_pit.ts";
import { headersTaken } from "../../headers/takes.ts";
import { ownGround } from "../../soil/own_ground.ts";
import { type SoilTaken, soilTaken } from "../../soil/takes.ts";
import type { StoreRequest } from "../../store/request.ts";
import { coarseRequest, storeRequest } from "../../store/takes.ts";
import { tubesChapter } from "../../tubes/compute.ts";
import { tubesTaken } from "../../tubes/takes.ts";
import type { Resolution } from "../types.ts";
import type { CompletedSections } from "./completed.ts";
import { remembered } from "./remembered.ts";

/** What the store is asked, and what the chapters before it say. */
export interface Requested {
  readonly request: StoreRequest;
  readonly notices: readonly Notice[];
}

const ground = remembered(({ inputs, climate }: Pick<SoilTaken, "inputs" | "climate">) => {
  const { properties, wave } = ownGround(inputs, climate);
  return { properties, wave };
});

/**
 * Runs soil, tubes, headers and fan.
 *
 * @param sections inputs with nothing left open
 * @param climate weather of the year
 * @param resolution how finely the store is to be computed
 * @throws {InputError} where the case makes no sense
 */
export function requested(
  sections: CompletedSections,
  climate: ClimateYear,
  resolution: Resolution,
): Requested {
  const study = { ...sections, climate };
  const { inputs, climate: openSky } = soilTaken(study);
  const soil = ground({ inputs, climate: openSky });
  const { inputs: field, surroundings } = tubesTaken(study);
  const tubes = tubesChapter(field, surroundings);
  const headers = headersInPit(headersTaken(study, { tubes }));
  const asked = fanTaken(study, { headers });
  const fan = fanChapter(asked.inputs, asked.surroundings);
  const earlier = { soil, tubes, headers, fan };
  return {
    request: resolution === "full" ? storeRequest(study, earlier) : coarseRequest(study, earlier),
    notices: [...tubes.notices, ...headers.notices, ...fan.notices],
  };
}
