/** Evaporation from the wet floor at the temperature of its surface. @module */
import { MOLAR_MASS_RATIO } from "../../air/mod.ts";
import { floorRise } from "./floor_surface.ts";
import { quickSaturation } from "./saturation_table.ts";
import type { StepTerms } from "./step_terms.ts";

/** Vapour of the floor as a straight line: conductance·(ratio − humidity ratio of the air), kg/s. */
export interface FloorVapour {
  /** kg/s per unit of humidity ratio, the cooling of the surface counted */
  readonly conductance: number;
  /** kg/kg at which the floor gives off nothing */
  readonly ratio: number;
}

/** Newton steps from the surface of the trial before, and from a dry one where there was none. */
const PASSES = 1;
const FIRST_PASSES = 2;

/**
 * Vapour of the floor at a trial air temperature.
 *
 * The surface lies behind the floor's film and sees cover and sky past the leaves, so it is linear in
 * what evaporates, T_s = T + D = A − B·E ({@link floorRise}). E = V(w_s(T_s) − w) is solved for T_s at the
 * humidity at the start of the step (Newton) and made a straight line there: evaporation cools the
 * surface, which holds it back.
 */
export function floorVapour(terms: StepTerms, temperature: number): FloorVapour {
  const { floorFilm, floorVapour: wet, pressure, start, view } = terms;
  if (wet <= 0) return { conductance: 0, ratio: 0 };
  const dry = temperature + floorRise(terms, temperature, 0);
  const cooling = wet * (1 - view.soil) * terms.floorLatent / floorFilm / view.held;
  const first = Number.isNaN(terms.wetRise);
  const passes = first ? FIRST_PASSES : PASSES;
  let surface = first ? dry : dry + terms.wetRise;
  let [ratio, slope] = [0, 0];
  for (let pass = 0;; pass++) {
    const vapour = Math.min(0.9 * pressure, quickSaturation(surface));
    ratio = MOLAR_MASS_RATIO * vapour / (pressure - vapour);
    slope = ratio * pressure / (pressure - vapour) * 4098 / (surface + 237.3) ** 2;
    if (pass === passes) break;
    const error = surface - dry + cooling * (ratio - start.humidityRatio);
    surface -= error / (1 + cooling * slope);
  }
  terms.wetRise = surface - dry;
  return {
    conductance: wet / (1 + cooling * slope),
    ratio: ratio + slope * (dry - surface),
  };
}
