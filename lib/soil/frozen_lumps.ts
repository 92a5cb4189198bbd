/** Lumps of freezing soil in the potential in which frozen and unfrozen soil conduct alike. @module */
import type { FreezingLumps } from "./lumps.ts";
import { conductionPotential, type FreezingCurve, temperatureOfPotential } from "./potential.ts";

/** A lump of soil: J and J/K of all of it, or for each metre of a slice. */
export interface FrozenLump {
  /** J set free when all its water freezes */
  readonly latent: number;
  /** K below 0 degC over which it freezes, evenly */
  readonly range: number;
  /** J/K, unfrozen and all water ice */
  readonly capacity: number;
  readonly frozenCapacity: number;
  /** ratio of frozen to unfrozen conductivity */
  readonly ratio: number;
}

/** K below its freezing range at which a lump's heat content is right. */
const DEEP_FROST = 2;
/** Least share of the latent heat left, so that a lump is never without. */
const LEAST = 0.5;

/**
 * One curve of conduction for lumps that conduct into each other: that of their soil, or the mean of
 * their soils by water. A frozen layer of another soil then conducts too well or too badly by the
 * ratio of the two, but equal temperatures never drive heat. Null where frozen soil conducts as
 * unfrozen does.
 */
export function commonCurve(
  lumps: readonly Pick<FrozenLump, "latent" | "range" | "ratio">[],
): FreezingCurve | null {
  const wet = lumps.filter((lump) => lump.latent > 0);
  if (wet.every((lump) => lump.ratio === 1)) return null;
  const water = wet.reduce((sum, lump) => sum + lump.latent, 0);
  const mean = (of: "ratio" | "range") =>
    wet.every((lump) => lump[of] === wet[0]![of])
      ? wet[0]![of]
      : wet.reduce((sum, lump) => sum + lump.latent * lump[of], 0) / water;
  return { ratio: mean("ratio"), range: mean("range") };
}

/** Potential of a temperature; the temperature itself where there is no curve. */
export function potentialAt(curve: FreezingCurve | null, temperature: number): number {
  return curve === null ? temperature : conductionPotential(curve, temperature);
}

/** Temperature of a potential; the potential itself where there is no curve. */
export function temperatureAt(curve: FreezingCurve | null, potential: number): number {
  return curve === null ? potential : temperatureOfPotential(curve, potential);
}

/**
 * Latent heat and range of a lump in the potential. Conduction holds C_u θ whatever the temperature;
 * ice holds C_f T. The latent heat is what makes up for the difference at some kelvin of frost, so
 * that the heat of freezing a lump is right; at other temperatures it errs by a few hundredths of
 * the latent heat.
 */
function lumpIn(curve: FreezingCurve | null, lump: FrozenLump) {
  const deep = -lump.range - DEEP_FROST;
  const held = lump.frozenCapacity * deep - lump.capacity * potentialAt(curve, deep);
  return {
    latent: Math.max(LEAST * lump.latent, lump.latent - held),
    range: -potentialAt(curve, -lump.range),
  };
}

/** The same for all lumps. */
export function lumpsIn(
  curve: FreezingCurve | null,
  lumps: readonly FrozenLump[],
): FreezingLumps {
  const all = lumps.map((lump) => lumpIn(curve, lump));
  return {
    latent: Float64Array.from(all, (lump) => lump.latent),
    range: Float64Array.from(all, (lump) => lump.range),
  };
}
