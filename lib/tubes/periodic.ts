/**
 * Heat that a tube stores in the soil in a swing of the air temperature: exact for a sine wave.
 *
 * Symbols: R tube radius, r₀ outer radius of the soil that belongs to it, h film coefficient, λ
 * conductivity and C volumetric heat capacity of the soil, ω = 2π/period, σ = √(iωC/λ).
 *
 * @module
 */
import { Complex } from "complex.js";
import { DAY, kilowattHours, requireInRange } from "../basics/mod.ts";
import { besselI, besselK } from "./bessel.ts";

/** Soil round one tube. */
export interface TubeSoil {
  /** W/(m K) */
  readonly conductivity: number;
  /** J/(m³ K) */
  readonly heatCapacity: number;
  /** m; Infinity for a tube alone */
  readonly outerRadius: number;
  /** at the outer radius: no heat flow between tubes that work alike, or undisturbed ground */
  readonly outside: "adiabatic" | "isothermal";
}

/** A complex number as plain data. */
export interface ComplexValue {
  /** real part, the same unit as the value */
  readonly re: number;
  /** imaginary part, the same unit */
  readonly im: number;
}

/**
 * Outer radius of the soil that belongs to one tube of a field. r₀ = √(s_x·s_y/π).
 *
 * @param spacing between tubes, m
 * @param height of the soil that belongs to a layer, m
 * @returns m
 */
export function soilRadius(spacing: number, height: number): number {
  return Math.sqrt(spacing * height / Math.PI);
}

/** Argument beyond which the outer end of the soil is no longer felt: e^(−2·25). */
const FAR = 25;

/**
 * Admittance of the soil at the tube wall: heat flux over wall temperature in a sine wave.
 *
 * k̃ = λσ·[I₁(σr₀)K₁(σR) − K₁(σr₀)I₁(σR)] / [I₁(σr₀)K₀(σR) + K₁(σr₀)I₀(σR)], adiabatic at r₀; with
 * I₀, K₀ for I₁, −K₁ of r₀ where it is isothermal; λσ·K₁(σR)/K₀(σR) in infinite soil.
 *
 * Source: Hollmuller 2003 [hollmuller-2003]. Valid for: heat flow across the tube only, one kind of
 * soil, no freezing.
 *
 * @param soil soil round the tube
 * @param wave tube radius, m, and period, s
 * @returns W/(m² K)
 */
export function soilAdmittance(
  soil: TubeSoil,
  wave: { readonly radius: number; readonly period: number },
): ComplexValue {
  requireInRange("soil conductivity", soil.conductivity, 1e-3, 100, "W/(m K)");
  requireInRange("soil heat capacity", soil.heatCapacity, 1e4, 1e8, "J/(m³ K)");
  requireInRange("tube radius", wave.radius, 1e-4, 100, "m");
  requireInRange("outer radius of the soil", soil.outerRadius, wave.radius, Infinity, "m");
  const omega = 2 * Math.PI / wave.period;
  const sigma = new Complex(0, omega * soil.heatCapacity / soil.conductivity).sqrt();
  const inner = sigma.mul(wave.radius);
  const front = sigma.mul(soil.conductivity);
  const [k0, k1] = [besselK(0, inner), besselK(1, inner)];
  if (sigma.re * (soil.outerRadius - wave.radius) > FAR) return plain(front.mul(k1).div(k0));
  const outer = sigma.mul(soil.outerRadius);
  const [i0, i1] = [besselI(0, inner), besselI(1, inner)];
  const adiabatic = soil.outside === "adiabatic";
  const iOuter = adiabatic ? besselI(1, outer) : besselI(0, outer);
  const kOuter = adiabatic ? besselK(1, outer) : besselK(0, outer).neg();
  const above = iOuter.mul(k1).sub(kOuter.mul(i1));
  const below = iOuter.mul(k0).add(kOuter.mul(i0));
  return plain(front.mul(above).div(below));
}

function plain(value: Complex): ComplexValue {
  return { re: value.re, im: value.im };
}

/** A tube in soil whose inlet air swings as a sine wave about the soil's mean temperature. */
export interface PeriodicTube {
  /** soil section in SI */
  readonly soil: TubeSoil;
  /** inside, m */
  readonly diameter: number;
  /** m */
  readonly length: number;
  /** W/(m² K) */
  readonly filmCoefficient: number;
  /** heat capacity rate of the air, W/K; Infinity for air that does not change along the tube */
  readonly capacityRate: number;
  /** s */
  readonly period: number;
}

/** How air and soil answer to the wave. */
export interface PeriodicResponse {
  /** soil alone and soil with film, W/(m² K) */
  readonly soilAdmittance: ComplexValue;
  /** soil with the film, W/(m² K) */
  readonly admittance: ComplexValue;
  /** ratio of the amplitude of the outlet air to that of the inlet */
  readonly amplitudeRatio: number;
  /** lag of the outlet wave, rad */
  readonly lag: number;
  /** J into the soil (and out again) in one half wave, for 1 K of inlet amplitude */
  readonly heatPerHalfWave: number;
}

/**
 * Outlet wave and heat stored for a sine wave of the inlet air.
 *
 * T(L) = T₀·exp(−S·U/ṁc), U = h·k̃/(h + k̃); heat in a half wave = (2/ω)·ṁc·T₀·|1 − exp(−S·U/ṁc)|,
 * or (2/ω)·S·|U| where the air does not change.
 *
 * Source: Hollmuller 2003 [hollmuller-2003]. Valid for: constant air flow, dry walls.
 *
 * @param tube the tube, its soil and air
 * @returns the response
 */
export function periodicResponse(tube: PeriodicTube): PeriodicResponse {
  const radius = tube.diameter / 2;
  const soil = soilAdmittance(tube.soil, { radius, period: tube.period });
  const soilValue = new Complex(soil.re, soil.im);
  const admittance = soilValue.mul(tube.filmCoefficient).div(soilValue.add(tube.filmCoefficient));
  const surface = Math.PI * tube.diameter * tube.length;
  const omega = 2 * Math.PI / tube.period;
  const units = admittance.mul(surface / tube.capacityRate);
  const still = tube.capacityRate === Infinity;
  const heatAmplitude = still
    ? admittance.abs() * surface
    : new Complex(1, 0).sub(units.neg().exp()).abs() * tube.capacityRate;
  return {
    soilAdmittance: soil,
    admittance: plain(admittance),
    amplitudeRatio: Math.exp(-units.re),
    lag: units.im,
    heatPerHalfWave: 2 / omega * heatAmplitude,
  };
}

/**
 * Heat that a metre of tube stores in half a day for each kelvin of the air's daily swing, with air
 * that does not change along the tube: an upper bound.
 *
 * @example 4-inch tube in soil of 1.0 W/(m K) and 2.0 MJ/(m³ K), film 15 W/(m² K)
 * ```ts
 * import { dailyHeatPerMetre } from "./periodic.ts";
 * import assert from "node:assert/strict";
 *
 * const heat = dailyHeatPerMetre({ conductivity: 1, heatCapacity: 2e6 }, 0.102, 15);
 * assert.equal(heat.toFixed(4), "0.0212"); // kWh/(m K)
 * ```
 *
 * @param soil conductivity W/(m K) and heat capacity J/(m³ K)
 * @param diameter inside, m
 * @param filmCoefficient W/(m² K)
 * @returns kWh/(m K)
 */
export function dailyHeatPerMetre(
  soil: { readonly conductivity: number; readonly heatCapacity: number },
  diameter: number,
  filmCoefficient: number,
): number {
  const { heatPerHalfWave } = periodicResponse({
    soil: { ...soil, outerRadius: Infinity, outside: "adiabatic" },
    diameter,
    length: 1,
    filmCoefficient,
    capacityRate: Infinity,
    period: DAY,
  });
  return kilowattHours(heatPerHalfWave);
}
