/**
 * How many tubes: for the air, and for the heat.
 *
 * @module
 */
import { HOUR, requireInRange } from "../basics/mod.ts";
import { crossSection } from "./pressure.ts";

/**
 * Air flow of a number of air changes per hour.
 *
 * @param volume of the house, m³
 * @param changes per hour
 * @returns m³/s
 */
export function airChangeFlow(volume: number, changes: number): number {
  return volume * changes / HOUR;
}

/**
 * Number of tubes that carry an air flow at a speed, to the nearest whole tube.
 *
 * @example 30 × 96 ft house, 5 air changes an hour, 4-inch tubes at 2 m/s
 * ```ts
 * import { airChangeFlow, flowLedCount } from "./rule_of_thumb_count.ts";
 * import assert from "node:assert/strict";
 *
 * assert.equal(flowLedCount(airChangeFlow(960.7, 5), 2, 0.102), 82);
 * ```
 *
 * @param airFlow m³/s of the field
 * @param airSpeed m/s in the tubes
 * @param diameter inside, m
 * @returns number of tubes, 1 or more
 */
export function flowLedCount(airFlow: number, airSpeed: number, diameter: number): number {
  requireInRange("air speed", airSpeed, 0.01, 100, "m/s");
  return Math.max(1, Math.round(airFlow / (airSpeed * crossSection(diameter))));
}

/**
 * Number of tubes that store a wanted heat, rounded up.
 *
 * @param heat wanted in a day, kWh
 * @param heatPerTube of one tube in a day, kWh
 * @returns number of tubes, 1 or more
 */
export function heatLedCount(heat: number, heatPerTube: number): number {
  requireInRange("heat of one tube", heatPerTube, 1e-9, 1e9, "kWh");
  return Math.max(1, Math.ceil(heat / heatPerTube - 1e-9));
}
