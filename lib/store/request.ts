/** What the store is given by the chapters before it. @module */
import type { ClimateYear } from "../climate/types.ts";
import type { FanResult } from "../fan/types.ts";
import type { HeadersResult } from "../headers/types.ts";
import type { HouseInputs } from "../house/types.ts";
import type { SoilInputs, SoilResult } from "../soil/types.ts";
import type { TubesInputs, TubesResult } from "../tubes/types.ts";
import type { MeshSettings } from "./ground/mesh.ts";
import type { StoreInputs } from "./types.ts";

/** How fine the computation is, where it is not as a study is run. */
export interface Fineness {
  /** cells of the soil */
  readonly mesh?: MeshSettings | undefined;
  /** s, step lengths of a year, the longest while the fan runs first; each divides the hour */
  readonly steps?: readonly number[] | undefined;
}

/** What the store chapter is given. */
export interface StoreRequest {
  /** store section of the study */
  readonly inputs: StoreInputs;
  /** weather of the year */
  readonly climate: ClimateYear;
  /** soil section of the study */
  readonly soilInputs: SoilInputs;
  /** soil section in SI */
  readonly soil: Pick<SoilResult, "properties" | "wave">;
  /** house section of the study */
  readonly houseInputs: HouseInputs;
  /** of the tubes section of the study: along or across, and m³/s of the design air flow */
  readonly tubesInputs: Pick<TubesInputs, "direction" | "airFlow">;
  /** tubes section in SI */
  readonly tubes: Pick<
    TubesResult,
    "product" | "count" | "length" | "diameter" | "positions" | "filmCoefficient"
  >;
  /** flow of each tube over the mean */
  readonly headers: Pick<HeadersResult, "shares">;
  /** m³/s and W of the operating point, kg/m³; where the speeds differ, the points of the two modes */
  readonly fan:
    & Pick<FanResult, "airFlow" | "power" | "density">
    & Partial<Pick<FanResult, "charge" | "discharge">>;
  /** true where stores are compared: neighbouring tubes are taken together sooner */
  readonly rough?: boolean | undefined;
  /** cells and steps, where they are other than those of a study */
  readonly fineness?: Fineness | undefined;
}
