/** The undisturbed ground with conductivity, moisture and cover changed. @module */
import { groundAtDepth, undisturbedGround } from "./ground.ts";
import type { GroundYear } from "./ground.ts";
import { soilWithMoisture, studyLayers } from "./layers.ts";
import { BARE_SOIL, GRASS } from "./surface.ts";
import type { GroundCover } from "./surface.ts";
import type { SoilInputs, SoilProperties, SoilSensitivity } from "./types.ts";
import type { DailyWeather } from "./weather.ts";

/** One variant of the soil. */
interface Variant {
  readonly change: string;
  readonly inputs: SoilInputs;
  readonly properties: SoilProperties;
  readonly cover?: GroundCover;
}

function withConductivity(properties: SoilProperties, conductivity: number): SoilProperties {
  const factor = conductivity / properties.conductivity;
  return {
    ...properties,
    conductivity,
    frozenConductivity: properties.frozenConductivity * factor,
    diffusivity: properties.diffusivity * factor,
  };
}

function variants(inputs: SoilInputs, properties: SoilProperties): Variant[] {
  const [low, high] = properties.conductivityRange;
  const drier = inputs.moisture / 2;
  const wetter = Math.min(1.5 * inputs.moisture, properties.porosity);
  const moist = (change: string, moisture: number): Variant => ({
    change,
    inputs: { ...inputs, moisture },
    properties: soilWithMoisture(inputs, moisture),
  });
  return [
    {
      change: "lowest plausible conductivity",
      inputs,
      properties: withConductivity(properties, low),
    },
    {
      change: "highest plausible conductivity",
      inputs,
      properties: withConductivity(properties, high),
    },
    moist("half the moisture", drier),
    moist("moisture up by half, at most saturated", wetter),
    {
      change: "bare ground kept clear of snow",
      inputs: { ...inputs, snowDepth: 0 },
      properties,
      cover: BARE_SOIL,
    },
  ];
}

function row(variant: Variant, ground: GroundYear, depth: number): SoilSensitivity {
  const series = groundAtDepth(ground, depth);
  return {
    change: variant.change,
    conductivity: variant.properties.conductivity,
    moisture: variant.inputs.moisture,
    frostDepth: ground.frostDepth,
    meanAtTubeDepth: series.reduce((sum, value) => sum + value, 0) / series.length,
    minAtTubeDepth: Math.min(...series),
    maxAtTubeDepth: Math.max(...series),
  };
}

/**
 * How far conductivity, moisture and a cleared surface move the ground at tube depth and the frost.
 *
 * @param question soil, its properties, weather, the unchanged ground, tube depth in m
 */
export function soilSensitivity(
  question: {
    readonly inputs: SoilInputs;
    readonly properties: SoilProperties;
    readonly weather: DailyWeather;
    readonly ground: GroundYear;
    readonly tubeDepth: number;
  },
): SoilSensitivity[] {
  const { inputs, properties, weather, ground, tubeDepth } = question;
  const changed = variants(inputs, properties).map((variant) => {
    const layers = studyLayers(variant.inputs, variant.properties);
    const { snowDepth } = variant.inputs;
    const cover = variant.cover ?? GRASS;
    const found = undisturbedGround({ weather, layers, snowDepth, cover });
    return row(variant, found, tubeDepth);
  });
  return [row({ change: "as given", inputs, properties }, ground, tubeDepth), ...changed];
}
