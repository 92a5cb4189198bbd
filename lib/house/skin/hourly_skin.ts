/** Hour by hour: what glazing and solid skin lose, and to what outside temperature. @module */
import { STEFAN_BOLTZMANN, ZERO_CELSIUS } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import { planeTotal } from "../../sun/mod.ts";
import type { HouseGeometry, HouseInputs, HouseModel, SkinPart } from "../types.ts";
import { withCurtain } from "./curtain.ts";
import { BLACK_RADIATION, EMISSIVITY, outsideFilm, splitGlazing } from "./films.ts";
import { findGlazing } from "./glazing_table.ts";
import { buriedConductance } from "./north_earth.ts";
import type { PaneSnow } from "./pane_snow.ts";
import { pastMonthMean, type PlaneSeries } from "./solar_gain.ts";

/** Solar absorptance of the outside of solid walls (common practice, no source). */
const WALL_ABSORPTANCE = 0.5;

function skyShare(part: SkinPart): number {
  return (1 + Math.cos(part.plane.tilt * Math.PI / 180)) / 2;
}

/** Radiation that the sky's cold takes from a surface above that of air, W/m². */
function skyDeficit(temperature: number, longwave: number): number {
  return STEFAN_BOLTZMANN * (temperature + ZERO_CELSIUS) ** 4 - longwave;
}

/** m² of glazing under snow in an hour, and its W/K with the snow in series. */
function snowAt(
  geometry: HouseGeometry,
  snow: readonly (PaneSnow | null)[] | null,
  hour: number,
  resistance: number,
): { covered: number; under: number } {
  let [covered, under] = [0, 0];
  snow?.forEach((pane, index) => {
    if (pane === null || pane.cover[hour]! <= 0) return;
    const white = geometry.parts[index]!.area * pane.cover[hour]!;
    covered += white;
    under += white / (resistance + pane.resistance[hour]!);
  });
  return { covered, under };
}

type Skin = Pick<
  HouseModel,
  | "glazingConductance"
  | "glazingDriving"
  | "opaqueConductance"
  | "opaqueDriving"
  | "filmArea"
  | "filmLongwave"
>;

/**
 * Conductance of the glazing and the temperature that drives it, the curtain closed where it is.
 *
 * @param inputs house section of the study
 * @param geometry of the house
 * @param climate one year of weather
 * @param longwave W/m² from the sky, hour by hour
 * @param closed 1 for each hour with the curtain closed
 * @param snow on each part of the geometry; null where it is left out
 * @returns hourly: W/K, degC, m² of clear film, W/m² onto it
 */
export function glazedSkin(
  inputs: HouseInputs,
  geometry: HouseGeometry,
  climate: ClimateYear,
  longwave: Float64Array,
  closed: Uint8Array,
  snow: readonly (PaneSnow | null)[] | null = null,
): Omit<Skin, "opaqueConductance" | "opaqueDriving"> {
  const glazing = findGlazing(inputs.glazing);
  const { innerResistance } = splitGlazing(
    glazing.heatTransmittance,
    glazing.longWaveTransmittance,
  );
  const glazed = geometry.parts.filter((part) => part.kind === "glazed");
  const area = glazed.reduce((sum, part) => sum + part.area, 0);
  const seen = area > 0
    ? glazed.reduce((sum, part) => sum + part.area * skyShare(part), 0) / area
    : 0;
  const hours = climate.dryBulb.length;
  const [glazingConductance, glazingDriving, filmArea, filmLongwave] = Array.from(
    { length: 4 },
    () => new Float64Array(hours),
  ) as [Float64Array, Float64Array, Float64Array, Float64Array];
  const clear = glazing.longWaveTransmittance;
  for (let hour = 0; hour < hours; hour++) {
    const outside = climate.dryBulb[hour]!;
    const film = outsideFilm(climate.windSpeed[hour]!);
    const open = 1 / (innerResistance + 1 / film);
    const whole = open + clear * BLACK_RADIATION;
    const left = closed[hour] === 1 && inputs.curtain !== null
      ? withCurtain(whole, inputs.curtain) / whole
      : 1;
    const deficit = seen * skyDeficit(outside, longwave[hour]!);
    const { covered, under } = snowAt(geometry, snow, hour, innerResistance + 1 / film);
    const whites = covered > 0 && closed[hour] === 1 && inputs.curtain !== null
      ? covered * withCurtain(under / covered, inputs.curtain)
      : under;
    const bare = (area - covered) * open * left;
    glazingConductance[hour] = bare + whites;
    const cold = EMISSIVITY * deficit / film;
    glazingDriving[hour] = whites > 0
      ? outside - cold * (bare * (1 - clear) + whites) / (bare + whites)
      : outside - EMISSIVITY * (1 - clear) * deficit / film;
    filmArea[hour] = (area - covered) * clear * left;
    filmLongwave[hour] = STEFAN_BOLTZMANN * (outside + ZERO_CELSIUS) ** 4 - deficit;
  }
  return { glazingConductance, glazingDriving, filmArea, filmLongwave };
}

/**
 * Conductance of walls and solid roof, and the sol-air and earth temperature that drives it.
 *
 * @param inputs house section of the study
 * @param geometry of the house
 * @param climate one year of weather
 * @param longwave W/m² from the sky, hour by hour
 * @param series W/m² onto a plane, hour by hour
 * @returns hourly: W/K, degC
 */
export function opaqueSkin(
  inputs: HouseInputs,
  geometry: HouseGeometry,
  climate: ClimateYear,
  longwave: Float64Array,
  series: PlaneSeries,
): Pick<Skin, "opaqueConductance" | "opaqueDriving"> {
  const hours = climate.dryBulb.length;
  const heat = new Float64Array(hours);
  let conductance = 0;
  const ground = pastMonthMean(climate.dryBulb);
  for (const part of geometry.parts) {
    if (part.kind === "glazed" || part.transmittanceHeat <= 0) continue;
    const { buried, earth } = buriedConductance(part, inputs, geometry);
    const open = part.area * part.transmittanceHeat * (1 - buried);
    conductance += open + earth;
    const light = planeTotal(series(part.plane));
    for (let hour = 0; hour < hours; hour++) {
      const outside = climate.dryBulb[hour]!;
      const lost = EMISSIVITY * skyShare(part) * skyDeficit(outside, longwave[hour]!);
      const gained = (WALL_ABSORPTANCE * light[hour]! - lost) /
        outsideFilm(climate.windSpeed[hour]!);
      heat[hour] = heat[hour]! + open * (outside + gained) + earth * ground[hour]!;
    }
  }
  return {
    opaqueConductance: new Float64Array(hours).fill(conductance),
    opaqueDriving: conductance > 0
      ? heat.map((value) => value / conductance)
      : climate.dryBulb.slice(),
  };
}
