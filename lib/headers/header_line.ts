/**
 * Air flow and static pressure along one header.
 *
 * @module
 */
import type { AirProperties } from "../air/mod.ts";
import { frictionFactor, reynoldsNumber } from "../tubes/mod.ts";
import { type JunctionModel, junctionRise } from "./junctions.ts";
import type { HeaderLine } from "./network.ts";

/** A header prepared for the solver. Flows are positive to the right. */
export interface PreparedLine {
  readonly line: HeaderLine;
  readonly count: number;
  readonly areas: Float64Array;
  /** length of the stretch on the left of tube i, and behind the last one, m */
  readonly stretches: Float64Array;
  /** air entering between tubes, m³/s, by stretch; negative where it leaves */
  readonly entering: Float64Array;
  readonly model: JunctionModel & { readonly density: number };
  readonly air: AirProperties;
}

/**
 * Static pressure rise over the half of a junction or over the whole of it.
 *
 * @param line the header
 * @param tube index of the tube
 * @param left flow on its left, m³/s
 * @param right flow on its right, m³/s
 * @returns Pa, right minus left
 */
export function riseAtTube(line: PreparedLine, tube: number, left: number, right: number): number {
  const area = line.areas[tube]!;
  const speedLeft = left / area;
  const speedRight = right / area;
  let rise = junctionRise(speedLeft, speedRight, left > right, line.model);
  const obstruction = line.line.obstructions?.[tube] ?? 0;
  if (obstruction > 0) {
    const speed = (speedLeft + speedRight) / 2;
    rise -= obstruction * line.model.density / 2 * speed * Math.abs(speed);
  }
  return rise;
}

/**
 * Pressure lost to friction along a stretch.
 *
 * @param line the header
 * @param diameter m
 * @param length m
 * @param flow m³/s
 * @returns Pa, positive for flow to the right
 */
export function frictionLoss(
  line: PreparedLine,
  diameter: number,
  length: number,
  flow: number,
): number {
  const speed = flow / (Math.PI * diameter ** 2 / 4);
  if (Math.abs(speed) < 1e-9 || length === 0) return 0;
  const { roughness, manning, frictionFactor: fixed } = line.line;
  const factor = fixed ??
    frictionFactor(
      { diameter, roughness, manning },
      reynoldsNumber(speed, diameter, line.air),
    );
  return factor * length / diameter * line.model.density / 2 * speed * Math.abs(speed);
}

/**
 * Static pressure rise along the stretch between two tubes, with a change of diameter and a port in
 * the middle where there is one.
 *
 * At a port that feeds, both directions start from the same total pressure; at one that takes air
 * out, both end at the same static pressure.
 *
 * @param line the header
 * @param stretch index of the stretch, 1 to count − 1
 * @param flow flow in its left part, m³/s
 * @returns Pa, right end minus left end
 */
export function riseAlong(line: PreparedLine, stretch: number, flow: number): number {
  const from = line.areas[stretch - 1]!;
  const to = line.areas[stretch]!;
  const length = line.stretches[stretch]!;
  const diameter = Math.sqrt(2 / Math.PI * (from + to));
  const entering = line.entering[stretch]!;
  const head = line.model.density / 2;
  if (entering === 0) {
    return head * flow * flow * (1 / (from * from) - 1 / (to * to)) -
      frictionLoss(line, diameter, length, flow);
  }
  const after = flow + entering;
  const dynamic = entering > 0 ? head * ((flow / from) ** 2 - (after / to) ** 2) : 0;
  return dynamic - frictionLoss(line, diameter, length / 2, flow) -
    frictionLoss(line, diameter, length / 2, after);
}

/**
 * Prepares a header.
 *
 * @param line the header
 * @param setting positions of the tubes, flow entering by stretch, junctions and air
 * @returns the prepared header
 */
export function prepareLine(
  line: HeaderLine,
  setting: {
    readonly positions: readonly number[];
    readonly entering: Float64Array;
    readonly junctions: JunctionModel;
    readonly air: AirProperties;
  },
): PreparedLine {
  const { positions, entering, junctions, air } = setting;
  const count = positions.length;
  const stretches = Float64Array.from(
    { length: count + 1 },
    (_, i) => i === 0 || i === count ? line.lead : positions[i]! - positions[i - 1]!,
  );
  return {
    line,
    count,
    areas: Float64Array.from(line.diameters, (diameter) => Math.PI * diameter ** 2 / 4),
    stretches,
    entering,
    model: { ...junctions, density: air.density },
    air,
  };
}
