/**
 * Colours of every picture. The six line colours keep an OKLab distance of at least 0.15 from each
 * other for normal sight and for simulated full protanopia and deuteranopia, and a luminance
 * contrast of at least 3:1 against white (WCAG 2.1 [wcag-2023], success criterion 1.4.11); the
 * tests check it. Line style or a label always tells the same as colour.
 *
 * @module
 */

/** Line and bar colours by what they usually mean. */
export const PALETTE = {
  /** cold, heat given back, outdoors */
  cold: "#427aef",
  /** warm, heat put in, indoors with the store */
  warm: "#db6718",
  /** latent heat, humidity */
  latent: "#950b85",
  /** air, flow */
  air: "#28a1a4",
  /** soil, limits, text-like lines */
  ink: "#1a2134",
  /** soil, crop */
  soil: "#514c03",
} as const;

/** Quiet grey for bands and helper lines; never carries data alone. */
export const GREY = "#c9cdd3";

/** The line colours in the order in which unnamed series take them. */
export const SERIES_COLOURS: readonly string[] = [
  PALETTE.cold,
  PALETTE.warm,
  PALETTE.latent,
  PALETTE.air,
  PALETTE.ink,
  PALETTE.soil,
];

/** Classes of a temperature field: cold to warm, lightest next to freezing. */
export const TEMPERATURE_CLASSES = {
  /** degC between classes */
  thresholds: [-30, -20, -10, 0, 10, 20, 30] as readonly number[],
  /** one more than thresholds */
  colours: [
    "#0b2550",
    "#1f4c94",
    "#5b8ad6",
    "#b7cff2",
    "#fde5c8",
    "#f3b06c",
    "#cf6a1c",
    "#7d3205",
  ] as readonly string[],
} as const;

/** Classes of a radiation field: night to full sun, darker is less. */
export const RADIATION_CLASSES = {
  /** W/m² between classes */
  thresholds: [1, 100, 200, 400, 600, 800] as readonly number[],
  /** one more than thresholds */
  colours: [
    "#1a2134",
    "#3c3757",
    "#71495f",
    "#ad6647",
    "#dc9440",
    "#f3c76c",
    "#fdf0bd",
  ] as readonly string[],
} as const;

/** Classes of ground temperature: finer, around freezing and the usual store temperatures. */
export const GROUND_CLASSES = {
  /** degC between classes */
  thresholds: [-10, -5, 0, 5, 10, 15, 20] as readonly number[],
  /** one more than thresholds */
  colours: TEMPERATURE_CLASSES.colours,
} as const;
