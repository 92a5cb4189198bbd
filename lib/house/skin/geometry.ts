/** Areas, planes, volume and perimeter of the house from a few dimensions. @module */
import { InputError } from "../../basics/mod.ts";
import type { Plane } from "../../sun/types.ts";
import { findGlazing } from "./glazing_table.ts";
import { endOutline, type Outline, type ProfilePoint, strip } from "./outline.ts";
import type { HouseGeometry, HouseInputs, SkinPart } from "../types.ts";

const DEGREES = 180 / Math.PI;
/** strips into which each half of a hoop is cut */
const HOOP_STRIPS = 4;

type Skin = number | "glazed";

function plane(tilt: number, azimuth: number): Plane {
  return { tilt, azimuth: ((azimuth % 360) + 360) % 360 };
}

type Place = Pick<SkinPart, "side" | "element" | "name">;

interface Face {
  readonly area: number;
  readonly plane: Plane;
  readonly outline: Outline;
}

function part(place: Place, face: Face, skin: Skin, glazing: number): SkinPart {
  const glazed = skin === "glazed";
  return {
    ...place,
    kind: glazed ? "glazed" : "opaque",
    ...face,
    transmittanceHeat: glazed ? glazing : skin,
  };
}

const WALL_NAMES = {
  front: "front wall",
  back: "back wall",
  left: "left end wall",
  right: "right end wall",
} as const;

/** A wall before its knee wall is taken off. */
interface WallSide {
  readonly area: number;
  readonly length: number;
  readonly azimuth: number;
  readonly skin: Skin;
  /** corners between two heights, m */
  readonly outline: (low: number, high: number) => Outline;
}

/** A wall: solid as a whole, or glazed above a solid knee wall. */
function wall(
  at: SkinPart["side"],
  side: WallSide,
  inputs: HouseInputs,
  glazing: number,
): SkinPart[] {
  const face = (area: number, low: number, high: number): Face => ({
    area,
    plane: plane(90, side.azimuth),
    outline: side.outline(low, high),
  });
  const place = { side: at, element: "wall", name: WALL_NAMES[at] } as const;
  if (side.skin !== "glazed") {
    return [part(place, face(side.area, 0, Infinity), side.skin, glazing)];
  }
  const knee = inputs.kneeWallHeight;
  const kneeArea = Math.min(side.area, knee * side.length);
  return [
    part(
      { side: at, element: "knee wall", name: `${place.name} knee wall` },
      face(kneeArea, 0, knee),
      inputs.kneeWall,
      glazing,
    ),
    part(place, face(side.area - kneeArea, knee, Infinity), "glazed", glazing),
  ];
}

interface Profile {
  /** area of one end wall, m² */
  readonly endArea: number;
  /** roof strips from the glazed side to the back: arc length, m, tilt, degrees, and side */
  readonly strips: readonly { length: number; tilt: number; back: boolean }[];
  /** ends of the strips from the front eave to the top of the back wall, m */
  readonly roof: readonly ProfilePoint[];
  readonly backHeight: number;
}

function gableProfile(inputs: HouseInputs): Profile {
  const half = inputs.width / 2;
  const rise = inputs.ridgeHeight - inputs.eaveHeight;
  const slope = { length: Math.hypot(half, rise), tilt: Math.atan2(rise, half) * DEGREES };
  return {
    endArea: inputs.width * (inputs.eaveHeight + rise / 2),
    strips: [{ ...slope, back: false }, { ...slope, back: true }],
    roof: [[0, inputs.eaveHeight], [half, inputs.ridgeHeight], [inputs.width, inputs.eaveHeight]],
    backHeight: inputs.eaveHeight,
  };
}

function leanToProfile(inputs: HouseInputs): Profile {
  const rise = inputs.ridgeHeight - inputs.eaveHeight;
  return {
    endArea: inputs.width * (inputs.eaveHeight + rise / 2),
    strips: [{
      length: Math.hypot(inputs.width, rise),
      tilt: Math.atan2(rise, inputs.width) * DEGREES,
      back: false,
    }],
    roof: [[0, inputs.eaveHeight], [inputs.width, inputs.ridgeHeight]],
    backHeight: inputs.ridgeHeight,
  };
}

/** Circular arc above the side walls; half an ellipse where it rises more than half the width. */
function hoopProfile(inputs: HouseInputs): Profile {
  const half = inputs.width / 2;
  const rise = inputs.ridgeHeight - inputs.eaveHeight;
  const circular = rise <= half;
  const radius = (half * half + rise * rise) / (2 * rise);
  const opening = circular ? Math.asin(Math.min(1, half / radius)) : Math.PI / 2;
  // a point by the angle from the crown
  const point = (angle: number): [number, number] =>
    circular
      ? [radius * Math.sin(angle), radius * (Math.cos(angle) - 1) + rise]
      : [half * Math.sin(angle), rise * Math.cos(angle)];
  const strips = Array.from({ length: HOOP_STRIPS }, (_, i) => {
    const [from, to] = [
      opening * (HOOP_STRIPS - i) / HOOP_STRIPS,
      opening *
      (HOOP_STRIPS - i - 1) / HOOP_STRIPS,
    ];
    return { length: arcLength(point, to, from), tilt: chordTilt(point, to, from) };
  });
  const ends = Array.from({ length: 2 * HOOP_STRIPS + 1 }, (_, i): ProfilePoint => {
    const [across, up] = point(opening * (i - HOOP_STRIPS) / HOOP_STRIPS);
    return [half + across, inputs.eaveHeight + Math.max(0, up)];
  });
  const segment = circular
    ? radius * radius * (opening - Math.sin(opening) * Math.cos(opening))
    : Math.PI * half * rise / 2;
  return {
    endArea: inputs.width * inputs.eaveHeight + segment,
    strips: [
      ...strips.map((strip) => ({ ...strip, back: false })),
      ...strips.toReversed().map((strip) => ({ ...strip, back: true })),
    ],
    roof: ends,
    backHeight: inputs.eaveHeight,
  };
}

function arcLength(point: (angle: number) => [number, number], from: number, to: number): number {
  const pieces = 200;
  let length = 0;
  let [x0, y0] = point(from);
  for (let i = 1; i <= pieces; i++) {
    const [x, y] = point(from + (to - from) * i / pieces);
    length += Math.hypot(x - x0, y - y0);
    [x0, y0] = [x, y];
  }
  return length;
}

function chordTilt(point: (angle: number) => [number, number], from: number, to: number): number {
  const [x0, y0] = point(from);
  const [x1, y1] = point(to);
  return Math.atan2(y0 - y1, x1 - x0) * DEGREES;
}

const PROFILES = { gable: gableProfile, hoop: hoopProfile, "lean-to": leanToProfile } as const;

function checkDimensions(inputs: HouseInputs): void {
  if (!(inputs.length > 0 && inputs.width > 0)) {
    throw new InputError(
      `house length and width must be above 0: found ${inputs.length} m × ${inputs.width} m`,
    );
  }
  if (!(inputs.ridgeHeight > inputs.eaveHeight && inputs.eaveHeight >= 0)) {
    throw new InputError(
      `house ridge must be higher than the eave: found ridge ${inputs.ridgeHeight} m and eave ${inputs.eaveHeight} m`,
    );
  }
  if (inputs.shape !== "hoop" && inputs.kneeWallHeight > inputs.eaveHeight) {
    throw new InputError(
      `house knee wall must not be higher than the eave: found ${inputs.kneeWallHeight} m and ${inputs.eaveHeight} m`,
    );
  }
}

/**
 * Surfaces, floor area, volume and perimeter of the house.
 *
 * A gable has two roof planes, a lean-to one that rises from the glazed side to the back wall, a
 * hoop an arc of a circle (half an ellipse where it rises more than half its width) over straight
 * side walls, cut into strips of equal angle. Knee walls stand below glazed walls only; on a hoop they
 * end where the arc begins.
 *
 * @param inputs house section of the study
 * @returns areas in m², lengths in m, volume in m³
 * @throws {InputError} where the dimensions contradict each other
 */
export function houseGeometry(inputs: HouseInputs): HouseGeometry {
  checkDimensions(inputs);
  const glazing = findGlazing(inputs.glazing).heatTransmittance;
  const profile = PROFILES[inputs.shape](inputs);
  const { length, width, facing } = inputs;
  const back = facing + 180;
  const long = (at: number, top: number) => (low: number, high: number) =>
    low < top ? strip([at, low], [at, Math.min(high, top)], length) : [];
  const front = {
    area: length * inputs.eaveHeight,
    length,
    azimuth: facing,
    skin: "glazed" as const,
    outline: long(0, inputs.eaveHeight),
  };
  const rear = {
    area: length * profile.backHeight,
    length,
    azimuth: back,
    skin: inputs.northWall,
    outline: long(width, profile.backHeight),
  };
  const section: ProfilePoint[] = [[0, 0], ...profile.roof, [width, 0]];
  const end = (along: number, azimuth: number) => ({
    area: profile.endArea,
    length: width,
    azimuth,
    skin: inputs.endWalls,
    outline: (low: number, high: number) => endOutline(section, along, low, high),
  });
  const roof = profile.strips.map((piece, i) => {
    const side = piece.back ? "back" : "front";
    const name = profile.strips.length > 2 ? `${side} roof strip ${i + 1}` : `${side} roof`;
    return part(
      { side, element: "roof", name },
      {
        area: piece.length * length,
        plane: plane(piece.tilt, piece.back ? back : facing),
        outline: strip(profile.roof[i]!, profile.roof[i + 1]!, length),
      },
      piece.back ? inputs.northRoof : "glazed",
      glazing,
    );
  });
  const parts = [
    ...wall("front", front, inputs, glazing),
    ...roof,
    ...wall("back", rear, inputs, glazing),
    ...wall("left", end(length, facing + 90), inputs, glazing),
    ...wall("right", end(0, facing - 90), inputs, glazing),
  ].filter((surface) => surface.area > 1e-9);
  return {
    parts,
    floorArea: length * width,
    floorOutline: strip([0, 0], [width, 0], length),
    volume: profile.endArea * length,
    perimeter: 2 * (length + width),
  };
}
