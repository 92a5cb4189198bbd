/** What the tubes chapter takes of a study. @module */
import type { ClimateYear } from "../climate/types.ts";
import type { HouseInputs } from "../house/types.ts";
import { type DesignAir, designAir } from "./design_air.ts";
import type { TubesInputs } from "./types.ts";

/** What the tubes read of a study. */
export interface TubesStudy {
  readonly house: Pick<HouseInputs, "length" | "width">;
  readonly tubes: TubesInputs;
  readonly climate: ClimateYear;
}

/** All that the tubes chapter sees. */
export interface TubesTaken {
  readonly inputs: TubesInputs;
  readonly surroundings: DesignAir & { readonly house: Pick<HouseInputs, "length" | "width"> };
}

/** Picks what the tubes hang on. */
export function tubesTaken(study: TubesStudy): TubesTaken {
  return {
    inputs: study.tubes,
    surroundings: {
      house: { length: study.house.length, width: study.house.width },
      ...designAir(study),
    },
  };
}
