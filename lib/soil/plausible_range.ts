/** From where to where the ground may lie when its soil is changed within what is plausible. @module */
import type { SoilSensitivity } from "./types.ts";

/** Low and high end over several soils. */
export interface TriedRange {
  /** degC, lowest of the year at tube depth */
  readonly lowest: readonly [number, number];
  /** degC, highest of the year at tube depth */
  readonly highest: readonly [number, number];
  /** m, frost depth */
  readonly frostDepth: readonly [number, number];
}

/** The ground over all soils tried, and over those that keep their snow. */
export interface PlausibleGround {
  /** conductivity and moisture changed, snow as it lies */
  readonly soils: TriedRange;
  /** those and the ground kept clear of snow */
  readonly all: TriedRange;
  /** the ground kept clear of snow; null where it was not tried */
  readonly cleared: SoilSensitivity | null;
}

function rangeOf(rows: readonly SoilSensitivity[]): TriedRange {
  const ends = (value: (row: SoilSensitivity) => number): readonly [number, number] => [
    Math.min(...rows.map(value)),
    Math.max(...rows.map(value)),
  ];
  return {
    lowest: ends((row) => row.minAtTubeDepth),
    highest: ends((row) => row.maxAtTubeDepth),
    frostDepth: ends((row) => row.frostDepth),
  };
}

/**
 * Ranges over the soils that were tried.
 *
 * @param rows from `soilSensitivity`, the unchanged soil first
 */
export function plausibleGround(rows: readonly SoilSensitivity[]): PlausibleGround {
  const cleared = rows.find((row) => row.cleared === true) ?? null;
  return {
    soils: rangeOf(rows.filter((row) => row !== cleared)),
    all: rangeOf(rows),
    cleared,
  };
}
