/** The undisturbed ground with conductivity, moisture and cover changed. @module */
import { mean } from "d3-array";
import { groundAtDepth, undisturbedGround } from "./ground.ts";
import type { GroundYear } from "./ground.ts";
import { soilWithMoisture, studyLayers } from "./layers.ts";
import { soilProperties } from "./properties.ts";
import type { SoilMake } from "./properties.ts";
import { BARE_SOIL, GRASS } from "./surface.ts";
import { findSoil } from "./table.ts";
import type { SoilInputs, SoilProperties, SoilSensitivity } from "./types.ts";
import type { DailyWeather } from "./weather.ts";

/** One variant of the soil. */
interface Variant {
  readonly change: string;
  readonly propertiesOf: (soil: SoilMake) => SoilProperties;
  readonly moisture: number;
  readonly cleared?: true;
}

/** The soil with the lower (0) or upper (1) end of its plausible conductivity. */
function atRangeEnd(soil: SoilMake, end: 0 | 1): SoilProperties {
  const properties = soilProperties(soil);
  const conductivity = properties.conductivityRange[end];
  const factor = conductivity / properties.conductivity;
  return {
    ...properties,
    conductivity,
    frozenConductivity: properties.frozenConductivity * factor,
    diffusivity: properties.diffusivity * factor,
  };
}

/** Changes of every layer at once. */
function variants(inputs: SoilInputs): Variant[] {
  const { moisture } = inputs;
  const wetter = (soil: SoilMake) =>
    Math.min(1.5 * soil.moisture, 1 - soil.dryDensity / findSoil(soil.texture).solidDensity);
  return [
    {
      change: "lowest plausible conductivity",
      propertiesOf: (soil) => atRangeEnd(soil, 0),
      moisture,
    },
    {
      change: "highest plausible conductivity",
      propertiesOf: (soil) => atRangeEnd(soil, 1),
      moisture,
    },
    {
      change: "half the moisture",
      propertiesOf: (soil) => soilWithMoisture(soil, soil.moisture / 2),
      moisture: moisture / 2,
    },
    {
      change: "half as much moisture again, up to saturation",
      propertiesOf: (soil) => soilWithMoisture(soil, wetter(soil)),
      moisture: wetter(inputs),
    },
    {
      change: "bare ground kept clear of snow",
      propertiesOf: soilProperties,
      moisture,
      cleared: true,
    },
  ];
}

function row(variant: Variant, ground: GroundYear, question: Question): SoilSensitivity {
  const series = groundAtDepth(ground, question.tubeDepth);
  return {
    change: variant.change,
    conductivity: variant.propertiesOf(question.inputs).conductivity,
    moisture: variant.moisture,
    frostDepth: ground.frostDepth,
    meanAtTubeDepth: mean(series)!,
    minAtTubeDepth: Math.min(...series),
    maxAtTubeDepth: Math.max(...series),
    ...variant.cleared === true ? { cleared: true } : {},
  };
}

/** Soil, weather, the unchanged ground, tube depth in m. */
interface Question {
  readonly inputs: SoilInputs;
  readonly weather: DailyWeather;
  readonly ground: GroundYear;
  readonly tubeDepth: number;
}

/**
 * How far conductivity, moisture and a cleared surface move the ground at tube depth and the frost.
 *
 * @param question soil, weather, the unchanged ground, tube depth in m
 */
export function soilSensitivity(question: Question): SoilSensitivity[] {
  const { inputs, weather, ground } = question;
  const changed = variants(inputs).map((variant) => {
    const layers = studyLayers(inputs, variant.propertiesOf);
    const cover = variant.cleared ? BARE_SOIL : GRASS;
    const snowDepth = variant.cleared ? 0 : inputs.snowDepth;
    return row(variant, undisturbedGround({ weather, layers, snowDepth, cover }), question);
  });
  const given = {
    change: "as given",
    propertiesOf: soilProperties,
    moisture: inputs.moisture,
  };
  return [row(given, ground, question), ...changed];
}
