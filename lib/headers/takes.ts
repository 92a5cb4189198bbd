/** What the headers chapter takes of a study and of the tubes. @module */
import { withoutNotices } from "../basics/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import type { HouseInputs } from "../house/types.ts";
import { type DesignAir, designAir, type TubesInputs, type TubesResult } from "../tubes/mod.ts";
import type { HeadersInputs } from "./types.ts";

type FloorAndFooting = Pick<HouseInputs, "length" | "width" | "footingDepth">;

/** What the headers read of a study. */
export interface HeadersStudy {
  readonly headers: HeadersInputs;
  readonly tubes: Pick<TubesInputs, "slope" | "direction">;
  readonly house: FloorAndFooting;
  readonly climate: ClimateYear;
}

/** What the air in the headers hangs on. */
export interface HeadersAsked {
  readonly inputs: HeadersInputs;
  readonly tubes: TubesResult;
  readonly state: DesignAir;
}

/** All that the headers chapter sees: the air, and the pit the headers lie in. */
export interface HeadersTaken extends HeadersAsked {
  readonly ground: Pick<TubesInputs, "slope" | "direction"> & { readonly house: FloorAndFooting };
}

/** Picks what the air in the headers hangs on. */
export function headersAsked(
  study: HeadersStudy,
  { tubes }: { readonly tubes: TubesResult },
): HeadersAsked {
  return { inputs: study.headers, tubes: withoutNotices(tubes), state: designAir(study) };
}

/** Picks what the headers hang on. */
export function headersTaken(
  study: HeadersStudy,
  earlier: { readonly tubes: TubesResult },
): HeadersTaken {
  const { house: { length, width, footingDepth }, tubes: { slope, direction } } = study;
  return {
    ...headersAsked(study, earlier),
    ground: { slope, direction, house: { length, width, footingDepth } },
  };
}
