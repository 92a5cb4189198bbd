/**
 * Losses where air enters a tube from a header, in velocity heads of the tube.
 *
 * @module
 */
import reentrantText from "../../data/fittings/inlets_reentrant.csv" with { type: "text" };
import roundedText from "../../data/fittings/inlets_rounded.csv" with { type: "text" };
import { type DataRow, readDataTable, requireInRange, straightBetween } from "../basics/mod.ts";
import { FLUSH_INLET_LOSS } from "../tubes/mod.ts";
import type { TubeInlet } from "./types.ts";

const REENTRANT = byWall(readDataTable(reentrantText, "data/fittings/inlets_reentrant.csv", [
  "wall_over_diameter",
  "insertion_over_diameter",
  "loss",
]));
const ROUNDED = readDataTable(roundedText, "data/fittings/inlets_rounded.csv", [
  "radius_over_diameter",
  "loss",
]).map((row) => ({ at: row.number("radius_over_diameter"), loss: row.number("loss") }));

interface WallCurve {
  readonly wall: number;
  readonly insertions: readonly number[];
  readonly losses: readonly number[];
}

/** Gathers the rows of the table by wall thickness. */
function byWall(rows: readonly DataRow[]): readonly WallCurve[] {
  const walls = [...new Set(rows.map((row) => row.number("wall_over_diameter")))];
  return walls.map((wall) => {
    const own = rows.filter((row) => row.number("wall_over_diameter") === wall);
    return {
      wall,
      insertions: own.map((row) => row.number("insertion_over_diameter")),
      losses: own.map((row) => row.number("loss")),
    };
  });
}

/**
 * Loss of a tube that reaches into the header, sharp-edged.
 *
 * Source: Idelchik 1994 [idelchik-1994], diagram 3-1, as quoted by the fluids library [fluids-2016]
 * and by the Modelica Standard Library [modelica-library-2020]; straight lines between the points.
 *
 * @param insertion depth that it reaches in over its inside diameter, 0 or more
 * @param wall wall thickness over inside diameter
 * @returns velocity heads, 0.5 to 1
 */
export function reentrantInletLoss(insertion: number, wall: number): number {
  requireInRange("insertion", insertion, 0, Infinity, "diameters");
  requireInRange("wall thickness", wall, 0, 1, "diameters");
  return straightBetween(
    REENTRANT.map((curve) => curve.wall),
    REENTRANT.map((curve) => straightBetween(curve.insertions, curve.losses, insertion)),
    wall,
  );
}

/**
 * Loss of a flush inlet with a rounded edge.
 *
 * Source: Idelchik 1994 [idelchik-1994], diagram 3-4, as quoted by the fluids library
 * [fluids-2016]; straight lines between the points.
 *
 * @param radius edge radius over inside diameter
 * @returns velocity heads, 0.5 to 0.03
 */
export function roundedInletLoss(radius: number): number {
  requireInRange("edge radius", radius, 0, Infinity, "diameters");
  return straightBetween(ROUNDED.map(({ at }) => at), ROUNDED.map(({ loss }) => loss), radius);
}

/** Edge radius over diameter taken for a rounded inlet where nothing else is said. */
const ROUNDED_EDGE = 0.1;

/**
 * Loss of a tube inlet by its kind.
 *
 * @param inlet kind of inlet
 * @param shape insertion and wall thickness over the inside diameter
 * @returns velocity heads
 */
export function inletLoss(
  inlet: TubeInlet,
  shape: { readonly insertion: number; readonly wall: number },
): number {
  if (inlet === "flush") return FLUSH_INLET_LOSS;
  if (inlet === "rounded") return roundedInletLoss(ROUNDED_EDGE);
  return reentrantInletLoss(shape.insertion, shape.wall);
}

/** Drag coefficient of a short cylinder standing on the wall across the flow. */
const STUB_DRAG = 0.7;

/**
 * Loss that a tube end standing in the header causes to the air passing by, in velocity heads of the
 * header.
 *
 * ζ = c·s/(1 − s)³ with s the share of the cross-section that the stub blocks: its drag on the flow
 * that the narrowing speeds up.
 *
 * Source: after Idelchik's [idelchik-1994] formula for bodies in a pipe, with c = 0.7 for a short
 * cylinder (from memory).
 *
 * @param stub its outside diameter and insertion, m, and the header's inside diameter, m
 * @returns share blocked and velocity heads
 * @throws {OutOfRangeError} where it blocks 0.9 or more
 */
export function stubObstruction(
  stub: {
    readonly outsideDiameter: number;
    readonly insertion: number;
    readonly headerDiameter: number;
  },
): { readonly blocked: number; readonly loss: number } {
  const blocked = stub.outsideDiameter * stub.insertion /
    (Math.PI * stub.headerDiameter ** 2 / 4);
  requireInRange("share of the header blocked by a tube end", blocked, 0, 0.9, "(0 to 0.9)");
  return { blocked, loss: STUB_DRAG * blocked / (1 - blocked) ** 3 };
}
