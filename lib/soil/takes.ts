/** What the soil chapter takes of a study. @module */
import type { ClimateYear } from "../climate/types.ts";
import { openWeather } from "../climate/weather.ts";
import type { SoilInputs } from "./types.ts";

/** Where the layers of tubes lie, m. */
interface TubeLayers {
  readonly depth: number;
  readonly layers: number;
  readonly layerSpacing: number;
}

/** m, middle of the layers of tubes. */
function middleOfLayers({ tubes }: { readonly tubes: TubeLayers }): number {
  return tubes.depth + (tubes.layers - 1) * tubes.layerSpacing / 2;
}

/** What the soil reads of a study. */
export interface SoilStudy {
  readonly soil: SoilInputs;
  readonly climate: ClimateYear;
  readonly tubes: TubeLayers;
}

/** All that the soil chapter sees. */
export interface SoilTaken {
  readonly inputs: SoilInputs;
  readonly climate: ClimateYear;
  /** m, middle of the layers of tubes */
  readonly tubeDepth: number;
}

/** Picks what the soil hangs on. */
export function soilTaken(study: SoilStudy): SoilTaken {
  return {
    inputs: study.soil,
    climate: openWeather(study.climate),
    tubeDepth: middleOfLayers(study),
  };
}
