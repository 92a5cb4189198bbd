/**
 * Losses of single fittings and screens.
 *
 * @module
 */
import tableText from "../../data/fittings/losses.csv" with { type: "text" };
import { findById, readDataTable, requireInRange } from "../basics/mod.ts";

/** A fitting of the table. */
export interface Fitting {
  /** name in the table */
  readonly id: string;
  /** name for the reader */
  readonly name: string;
  /** velocity heads, and the range met */
  readonly loss: number;
  /** lowest velocity heads met */
  readonly low: number;
  /** highest velocity heads met */
  readonly high: number;
  /** where the figures come from */
  readonly source: string;
}

/** The fittings that come with the library. */
export const FITTINGS: readonly Fitting[] = readDataTable(
  tableText,
  "data/fittings/losses.csv",
  ["id", "name", "loss_velocity_heads", "low", "high", "source"],
).map((row) => ({
  id: row.text("id"),
  name: row.text("name"),
  loss: row.number("loss_velocity_heads"),
  low: row.number("low"),
  high: row.number("high"),
  source: row.text("source"),
}));

/**
 * Finds a fitting: what to put into `fan.riserLosses` and the like.
 *
 * @example A riser with two elbows
 * ```ts
 * import { findFitting, FITTINGS } from "./fittings.ts";
 *
 * const elbow = findFitting("elbow-sweep");
 * if (!FITTINGS.includes(elbow) || 2 * elbow.loss <= 0) throw new Error(elbow.name);
 * ```
 *
 * @param id id in data/fittings/losses.csv
 * @returns the fitting
 * @throws {InputError} listing the known ids
 */
export function findFitting(id: string): Fitting {
  return findById(FITTINGS, id, "fitting");
}

/**
 * Loss of a screen of round wire. K = 1.3·(1 − φ) + (1/φ − 1)², φ the open share of its area.
 *
 * Source: Idelchik 1994 [idelchik-1994], diagram 8-6, formula as quoted in public code. Valid for:
 * wire Reynolds numbers above 400; fine insect screen loses more.
 *
 * @example Half the area open: 1.3·0.5 + 1
 * ```ts
 * import { screenLoss } from "./fittings.ts";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(screenLoss(0.5), 1.65, 1e-12);
 * ```
 *
 * @param openShare share of the area, 0.05 to 1
 * @returns velocity heads before the screen
 */
export function screenLoss(openShare: number): number {
  requireInRange("open share of a screen", openShare, 0.05, 1, "(0.05 to 1)");
  return 1.3 * (1 - openShare) + (1 / openShare - 1) ** 2;
}
