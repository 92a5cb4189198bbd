/** Simulated colour vision and colour distances, for the tests of the palette. */

/**
 * Full protanopia and deuteranopia in linear RGB, severity 1.0. Machado, Oliveira & Fernandes 2009
 * [machado-2009], "A physiologically-based model for simulation of color vision deficiency", IEEE
 * TVCG 15(6), table of matrices.
 */
export const SIMULATIONS: Readonly<Record<string, readonly (readonly number[])[]>> = {
  normal: [[1, 0, 0], [0, 1, 0], [0, 0, 1]],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
};

/** Linear RGB of "#rrggbb", IEC 61966-2-1. */
export function linearRgb(colour: string): number[] {
  return [1, 3, 5].map((at) => {
    const value = parseInt(colour.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
}

/** Relative luminance, WCAG 2.1 [wcag-2023]. */
export function luminance(colour: string): number {
  const [red, green, blue] = linearRgb(colour);
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

/** Contrast ratio, WCAG 2.1 [wcag-2023]. */
export function contrast(one: string, other: string): number {
  const [low, high] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (high! + 0.05) / (low! + 0.05);
}

/** Colour as seen with a simulated deficiency, linear RGB. */
export function seenWith(colour: string, simulation: readonly (readonly number[])[]): number[] {
  const rgb = linearRgb(colour);
  return simulation.map((row) =>
    Math.min(1, Math.max(0, row.reduce((sum, weight, i) => sum + weight * rgb[i]!, 0)))
  );
}

/** Distance in OKLab, Ottosson 2020 [ottosson-2020]. */
export function oklabDistance(one: readonly number[], other: readonly number[]): number {
  const a = oklab(one);
  const b = oklab(other);
  return Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!, a[2]! - b[2]!);
}

function oklab([r, g, b]: readonly number[]): number[] {
  const l = Math.cbrt(0.4122214708 * r! + 0.5363325363 * g! + 0.0514459929 * b!);
  const m = Math.cbrt(0.2119034982 * r! + 0.6806995451 * g! + 0.1073969566 * b!);
  const s = Math.cbrt(0.0883024619 * r! + 0.2817188376 * g! + 0.6299787005 * b!);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
}
