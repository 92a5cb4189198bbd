/** What the fan chapter takes of a study and of the headers. @module */
import type { ClimateYear } from "../climate/types.ts";
import type { HeadersResult } from "../headers/types.ts";
import { designAir, type TubesInputs } from "../tubes/mod.ts";
import type { FanSurroundings } from "./compute.ts";
import type { FanInputs } from "./types.ts";

/** What the fan reads of a study. */
export interface FanStudy {
  readonly fan: FanInputs;
  readonly tubes: Pick<TubesInputs, "airFlow">;
  readonly climate: ClimateYear;
}

/** Results that the fan is computed from. */
export interface FanEarlier {
  readonly headers: HeadersResult;
}

/** All that the fan chapter sees. */
export interface FanTaken {
  readonly inputs: FanInputs;
  readonly surroundings: FanSurroundings;
}

/** Picks what the fan hangs on; the remark says nothing of the fan itself. */
export function fanTaken(study: FanStudy, { headers }: FanEarlier): FanTaken {
  return {
    inputs: { ...study.fan, note: "" },
    surroundings: {
      tubesInputs: { airFlow: study.tubes.airFlow },
      headers: { systemCurve: headers.systemCurve },
      ...designAir(study),
    },
  };
}
