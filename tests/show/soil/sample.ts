/** Made-up ground. */
import { findSoil, summariseSoil } from "../../../lib/soil/mod.ts";
import type { SoilInputs, SoilResult } from "../../../lib/soil/types.ts";
import { made } from "../made.ts";
import { DEFAULTS } from "../../harness/defaults.ts";

const depths = [0, 0.3, 0.6, 1, 1.5, 2, 3, 5];
export const soilInputs: SoilInputs = {
  ...DEFAULTS.soil,
  ...findSoil("loam"),
  measuredConductivity: null,
  waterTableDepth: 2.5,
  snowDepth: 0.2,
};
export const soilResult = summariseSoil(
  soilInputs,
  made<SoilResult>({
    properties: {
      conductivity: 1.3,
      frozenConductivity: 1.7,
      heatCapacity: 2.3e6,
      frozenHeatCapacity: 1.8e6,
      diffusivity: 5.6e-7,
      latentHeat: 6e7,
      conductivityRange: [1, 1.6],
      porosity: 0.45,
      saturation: 0.6,
    },
    wave: { mean: 5, amplitude: 14, minimumDay: 25, diffusivity: 5.6e-7 },
    frostDepth: 1.4,
    depths,
    monthly: Array.from(
      { length: 12 },
      (_, month) =>
        depths.map((depth) => 5 - 14 * Math.exp(-depth / 2) * Math.cos(month / 2 - depth / 2)),
    ),
    field: {
      depths,
      temperature: depths.map((depth) =>
        Float64Array.from(
          { length: 365 },
          (_, day) => 5 - 14 * Math.exp(-depth / 2) * Math.cos(day / 58 - depth / 2),
        )
      ),
    },
    tubeDepth: 0.9,
    temperatureAtTubeDepthMin: -3,
    temperatureAtTubeDepthMax: 13,
    climateWave: { mean: 4, amplitude: 15, minimumDay: 25, diffusivity: 5.6e-7 },
    difference: { mean: 1, largest: 1.6, waveFrostDepth: 2, waveFit: 0.7 },
    snowDepth: Float64Array.from({ length: 365 }, (_, day) => Math.max(0, 0.4 - day / 200)),
    sensitivity: ["as given", "bare ground kept clear of snow"].map((change, index) => ({
      change,
      conductivity: 1.3,
      moisture: 0.25,
      frostDepth: 1.4 + index,
      meanAtTubeDepth: 5,
      minAtTubeDepth: -3 - index,
      maxAtTubeDepth: 13,
      ...index === 1 ? { cleared: true } : {},
    })),
    notices: [],
  }),
);
