/** The surface of the floor between air, sun, soil and what it sees through the leaves. @module */
import type { StepTerms } from "./step_terms.ts";

/** W that the floor's surface takes up: sun less evaporation, less what it loses straight to cover and sky. */
function ontoFloor(terms: StepTerms, temperature: number, vapourFloor: number): number {
  return terms.solarFloor - terms.floorLatent * vapourFloor - terms.view.fixed -
    terms.view.perAir * temperature;
}

/**
 * K of the floor's surface above the air: D = ((1 − σ)·W/f + σ·(T₀ − T))/(1 + (1 − σ)·R₁/f), W onto
 * the surface, σ the soil's share of the film f, R₁ the straight loss per kelvin of D.
 */
export function floorRise(terms: StepTerms, temperature: number, vapourFloor: number): number {
  const { soil, held } = terms.view;
  return ((1 - soil) * ontoFloor(terms, temperature, vapourFloor) / terms.floorFilm +
    soil * (terms.boundary.floorTemperature - temperature)) / held;
}

/** Change of {@link floorRise} per kelvin of air temperature, vapour held. */
export function riseSlope({ view, floorFilm }: StepTerms): number {
  return -((1 - view.soil) * view.perAir / floorFilm + view.soil) / view.held;
}

/** Change of {@link floorDriving} per kelvin of air temperature, vapour held. */
export function drivingSlope(terms: StepTerms): number {
  const { view, floorFilm } = terms;
  return 1 - (view.perAir + view.perRise * riseSlope(terms)) / floorFilm;
}

/** degC that drives heat into the floor: air plus what falls on its surface over the film. */
export function floorDriving(terms: StepTerms, temperature: number, vapourFloor: number): number {
  const rise = floorRise(terms, temperature, vapourFloor);
  return temperature +
    (ontoFloor(terms, temperature, vapourFloor) - terms.view.perRise * rise) / terms.floorFilm;
}
