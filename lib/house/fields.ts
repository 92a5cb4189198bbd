/** The `house` section of the study file. @module */
import {
  byMonth,
  choice,
  type Fields,
  id,
  type Monthly,
  open,
  part,
  type Partly,
  quantity,
  quantityIdOrWord,
  quantityOr,
  quantityOrId,
  written,
} from "../basics/fields.ts";
import { readClockSpan, readSeason } from "../units/mod.ts";
import { findCrop } from "./crop/crop_table.ts";
import { findFloorCover } from "./floor/floor_cover.ts";
import { findGlazing } from "./skin/glazing_table.ts";
import { findWall } from "./skin/walls.ts";

/** Shape of the house. */
export type HouseShape = "gable" | "hoop" | "lean-to";

/** What becomes of snow on the glazing. */
export type GlazingSnow = "none" | "lies" | "cleared";

/**
 * The curtain on dull cold days: open by light, shut where it keeps more heat than the sun would
 * bring, or shut below limits of its own.
 */
export type DullDays = "open" | "balance" | "limits";

/** Night curtain. */
export interface CurtainInputs {
  /** added resistance when closed, m² K/W */
  readonly resistance: number;
  /** share of the glazing it covers, 0 to 1 */
  readonly coverage: number;
  /** share of the closed area that leaks past the edges as if open, 0 to 1 */
  readonly edgeLeak: number;
  /** closes below this radiation on the horizontal, W/m² */
  readonly closeBelow: number;
  /** and only while it is colder outside than this, degC */
  readonly closeBelowOutside: number;
  /** or, in the dark, while the house air is colder than this, degC; absent: never for that reason */
  readonly closeBelowInside?: number | undefined;
  /** hours of local standard time that count as dark instead, `17:00 to 8:00`; `none` or absent: by light */
  readonly clock?: string | undefined;
  /** how it stands on dull cold days; absent: open */
  readonly dullDays?: DullDays | undefined;
  /** `limits`: stays shut below this radiation on the horizontal, W/m² */
  readonly dullBelow?: number | undefined;
  /** and only while it is colder outside than this, degC */
  readonly dullBelowOutside?: number | undefined;
}

/** `house` section of the study file, in SI. */
export interface HouseInputs {
  /** shape of the cross-section */
  readonly shape: HouseShape;
  /** along the ridge, m */
  readonly length: number;
  /** across, m */
  readonly width: number;
  /** eave or knee height of the glazed long side, m */
  readonly eaveHeight: number;
  /** ridge height, m (back-wall height for a lean-to) */
  readonly ridgeHeight: number;
  /** azimuth the glazed long side faces, degrees clockwise from north */
  readonly facing: number;
  /** id in data/glazings */
  readonly glazing: string;
  /** U-value of the north wall, W/(m² K), or "glazed" */
  readonly northWall: number | "glazed";
  /** m, opaque wall under the glazing */
  readonly kneeWallHeight: number;
  /** U-value of that wall, W/(m² K) */
  readonly kneeWall: number;
  /** U-value of the end walls, W/(m² K), or glazed */
  readonly endWalls: number | "glazed";
  /** north roof plane: "glazed" or a U-value, W/(m² K) */
  readonly northRoof: number | "glazed";
  /** air changes per hour in calm air with the house 20 K warmer than outside */
  readonly leakage: number;
  /** further air changes per hour for each m/s of wind */
  readonly leakageWind: number;
  /** snow on the glazing: left out, lies until it slides or melts, or is cleared by hand */
  readonly glazingSnow: GlazingSnow;
  /** m of snow on the glazing above which it is cleared in the morning */
  readonly snowClearedAbove: number;
  /** typical depth of snow on the ground, m, which sets how much falls on the glazing */
  readonly snowDepth: number;
  /** night curtain; null for none */
  readonly curtain: CurtainInputs | null;
  /** resistance of the insulation around the edge, m² K/W; 0 for none */
  readonly edgeInsulation: number;
  /** how far it reaches below the floor, m */
  readonly edgeInsulationDepth: number;
  /** underside of the wall's footing below the floor surface, m; 0 where there is none, null unknown */
  readonly footingDepth: number | null;
  /** width, m, of a horizontal wing of the edge insulation, laid outward; 0 for none */
  readonly edgeInsulationWing: number;
  /** height of earth against the north wall, m; 0 for none */
  readonly northEarthHeight: number;
  /** water held in barrels, m³ */
  readonly waterVolume: number;
  /** m² of the barrels */
  readonly waterSurface: number;
  /** masonry inside, m³; 0 for none */
  readonly masonryVolume: number;
  /** m² of masonry that the air and the sun reach; 0 for none */
  readonly masonrySurface: number;
  /** share of the surface of barrels and masonry that sees the sun, 0 to 1 */
  readonly massSunView: number;
  /** share of the light that solid walls and roofs take up inside, 0 to 1; white paint takes up little */
  readonly wallAbsorptance: number;
  /** share of the light kept that warms the air at once, 0 to 1; null: what falls on walls and roof */
  readonly lightToAir: number | null;
  /** share of the light kept out by whitewash or shade cloth while it is on; 0 for none */
  readonly summerShade: number;
  /** degC, it is on while the mean of the past 30 days outside is above this */
  readonly summerShadeAbove: number;
  /** id in data/crops */
  readonly crop: string;
  /** id in data/floors of what lies on the beds */
  readonly bedCover: string;
  /** share of the floor that is paths, 0 to 1 */
  readonly pathShare: number;
  /** id in data/floors of what lies on the paths */
  readonly pathCover: string;
  /** ratio of leaf area to floor area, 0 to 8; one for the year or twelve, January first */
  readonly leafArea: Monthly;
  /** degC */
  readonly heatSetPoint: number;
  /** degC the heater holds while the sun is up; `heatSetPoint` is held by night */
  readonly heatSetPointDay: number;
  /** days on which the heater may run, as `readSeason` writes them; absent: all year */
  readonly heatSeason?: string | undefined;
  /** degC, vents open above */
  readonly ventSetPoint: number;
  /** air changes per hour with the vents fully open */
  readonly ventCapacity: number;
  /** relative humidity above which the house is purged, 0 to 1 */
  readonly purgeHumidity: number;
  /** W; 0 means free running */
  readonly heaterPower: number;
}

/** The curtain as given: these keys may still wait for their default. */
export type CurtainGiven = Partly<CurtainInputs, "closeBelowOutside">;
/** The section as given: these keys may still wait for their default. */
export type HouseGiven =
  & Omit<
    Partly<
      HouseInputs,
      "ridgeHeight" | "snowDepth" | "waterSurface" | "leafArea" | "heatSetPointDay"
    >,
    "curtain"
  >
  & { readonly curtain: CurtainGiven | null };

const curtainFields: Fields<CurtainGiven> = {
  resistance: quantity,
  coverage: quantity,
  edgeLeak: quantity,
  closeBelow: quantity,
  closeBelowOutside: open(quantity),
  closeBelowInside: quantityOr("none", undefined),
  clock: written(readClockSpan, "17:00 to 8:00"),
  dullDays: choice("open", "balance", "limits"),
  dullBelow: quantity,
  dullBelowOutside: quantity,
};

const wallTransmittance = (id: string): number => findWall(id).heatTransmittance;
const wall = quantityOrId(wallTransmittance);
const wallOrGlazed = quantityIdOrWord(wallTransmittance, "glazed");

/** Keys of the section. */
export const houseFields: Fields<HouseGiven> = {
  shape: choice("gable", "hoop", "lean-to"),
  length: quantity,
  width: quantity,
  eaveHeight: quantity,
  ridgeHeight: open(quantity),
  facing: quantity,
  glazing: id(findGlazing),
  northWall: wallOrGlazed,
  kneeWallHeight: quantity,
  kneeWall: wall,
  endWalls: wallOrGlazed,
  northRoof: wallOrGlazed,
  leakage: quantity,
  leakageWind: quantity,
  glazingSnow: choice("none", "lies", "cleared"),
  snowClearedAbove: quantity,
  snowDepth: open(quantity),
  curtain: part(curtainFields, null),
  edgeInsulation: quantity,
  edgeInsulationDepth: quantity,
  footingDepth: quantityOr("unknown", null),
  edgeInsulationWing: quantity,
  northEarthHeight: quantity,
  waterVolume: quantity,
  waterSurface: open(quantity),
  masonryVolume: quantity,
  masonrySurface: quantity,
  massSunView: quantity,
  wallAbsorptance: quantity,
  lightToAir: quantityOr("geometry", null),
  summerShade: quantity,
  summerShadeAbove: quantity,
  crop: id(findCrop),
  leafArea: open(byMonth),
  bedCover: id(findFloorCover),
  pathShare: quantity,
  pathCover: id(findFloorCover),
  heatSetPoint: quantity,
  heatSetPointDay: open(quantity),
  heatSeason: written(readSeason, "1 Mar to 30 Nov"),
  ventSetPoint: quantity,
  ventCapacity: quantity,
  purgeHumidity: quantity,
  heaterPower: quantity,
};
