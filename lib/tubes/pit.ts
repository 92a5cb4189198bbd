/**
 * The pit that tubes and headers lie in.
 *
 * @module
 */
import { allowance } from "./allowances.ts";

/** What has to find room in the pit. */
export interface PitContents {
  /** m from the middle of the field to the centres of the outer tubes */
  readonly reach: number;
  /** m */
  readonly outsideDiameter: number;
  /** m between the centres of the headers */
  readonly length: number;
  /** m that the tubes fall from the supply to the return header */
  readonly fall: number;
  /** inside diameter of the wider header, m */
  readonly headerDiameter: number;
  /** underside of the lowest tube or header at the middle of the fall, m below the floor */
  readonly underside: number;
}

/** A pit under the middle of the house, m. */
export interface Pit {
  /** across the tubes, at the bottom */
  readonly width: number;
  /** along the tubes, at the bottom */
  readonly length: number;
  /** below the floor at the middle of the fall */
  readonly depth: number;
  /** below the floor at the low end of the tubes */
  readonly lowEnd: number;
  /** horizontal run of the sides for each metre of depth, m/m */
  readonly batter: number;
}

/**
 * Bottom of the pit: room to work beside the outer tubes and beyond the headers, bedding below. The
 * allowances stand in data/drawings/allowances.csv (common practice, no source).
 *
 * @param contents tubes and headers
 * @returns the pit
 */
export function pitRound(contents: PitContents): Pit {
  const { reach, outsideDiameter, length, fall, headerDiameter, underside } = contents;
  const depth = underside + allowance("bedding");
  return {
    width: 2 * (reach + outsideDiameter / 2 + allowance("working margin")),
    length: length + 2 * (headerDiameter / 2 + allowance("header space")),
    depth,
    lowEnd: depth + fall / 2,
    batter: allowance("batter"),
  };
}

/**
 * Volume of the pit with its battered sides, m³: the prismoid between bottom and floor.
 *
 * V = d·(A_bottom + A_top + 4·A_middle)/6.
 *
 * Source: exact for sides that are planes; at the mean depth, the fall left out.
 *
 * @param pit the pit
 * @returns m³ in the ground
 */
export function pitVolume(pit: Pit): number {
  const area = (height: number): number => {
    const run = 2 * pit.batter * height;
    return (pit.length + run) * (pit.width + run);
  };
  return pit.depth * (area(0) + area(pit.depth) + 4 * area(pit.depth / 2)) / 6;
}
