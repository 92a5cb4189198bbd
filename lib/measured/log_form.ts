/** Forms of the model of a logged compartment, and which numbers each fits. @module */
import type { LogParameters } from "./log_parameters.ts";

/** A form of the model; each item has the choices of docs/house.md. */
export interface LogForm {
  /** light let in: one share of the global radiation, or beam and diffuse by the sun's height */
  readonly light: "share" | "geometry";
  /** light to the air at once: fitted, none (no solid walls), a tenth */
  readonly air: "fitted" | "apart" | "none" | "tenth";
  /** leaf area: one, or growing along a logistic curve */
  readonly crop: "constant" | "growing";
  /** benches, pots and wet substrate: none, or a mass of their own */
  readonly bench: "none" | "mass";
  /** wet share of the floor: a tenth, or fitted */
  readonly floor: "tenth" | "fitted";
  /** vents: straight from the air inside, or from above the screens, which let air through gaps */
  readonly vents: "inside" | "above";
}

/** The form used before any was chosen by rule. */
export const FIRST_FORM: LogForm = {
  light: "share",
  air: "fitted",
  crop: "constant",
  bench: "none",
  floor: "tenth",
  vents: "inside",
};

/** The form that the second rule of docs/house.md chose on the first half of the log. */
export const CHOSEN_FORM: LogForm = {
  light: "geometry",
  air: "apart",
  crop: "growing",
  bench: "mass",
  floor: "fitted",
  vents: "above",
};

const CHOICES: { readonly [Item in keyof LogForm]: readonly LogForm[Item][] } = {
  light: ["share", "geometry"],
  air: ["fitted", "apart", "none", "tenth"],
  crop: ["constant", "growing"],
  bench: ["none", "mass"],
  floor: ["tenth", "fitted"],
  vents: ["inside", "above"],
};

/**
 * Forms that differ from one in a single item.
 *
 * @param form to start from
 */
export function neighbourForms(form: LogForm): LogForm[] {
  return (Object.keys(CHOICES) as (keyof LogForm)[]).flatMap((item) =>
    CHOICES[item].filter((choice) => choice !== form[item]).map((choice) => ({
      ...form,
      [item]: choice,
    }))
  );
}

/** Parameters that only some forms fit. */
const ONLY: Partial<Record<keyof LogParameters, (form: LogForm) => boolean>> = {
  airShare: ({ air }) => air === "fitted" || air === "apart",
  lampAirShare: ({ air }) => air === "apart",
  growth: ({ crop }) => crop === "growing",
  benchCapacity: ({ bench }) => bench === "mass",
  benchFilm: ({ bench }) => bench === "mass",
  benchShare: ({ bench }) => bench === "mass",
  wetFloor: ({ floor }) => floor === "fitted",
  gapExchange: ({ vents }) => vents === "above",
};

/**
 * Names of the parameters that a form fits.
 *
 * @param form of the model
 * @param names of all parameters
 */
export function fittedNames(
  form: LogForm,
  names: readonly (keyof LogParameters)[],
): (keyof LogParameters)[] {
  return names.filter((name) => ONLY[name]?.(form) ?? true);
}
