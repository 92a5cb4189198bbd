/** The `store` section of the study file. @module */
import {
  choice,
  type Fields,
  id,
  part,
  quantity,
  quantityOr,
  whole,
  written,
  yesNo,
} from "../basics/fields.ts";
import { findGlazing } from "../house/mod.ts";
import { readSeason } from "../units/mod.ts";
import type { PlateCollector } from "./air/collector.ts";

/** Another soil around the tubes, such as washed gravel. */
export interface GravelBed {
  /** m beyond the outermost tube centres on all sides */
  readonly margin: number;
  /** W/(m K) */
  readonly conductivity: number;
  /** J/(m³ K) */
  readonly heatCapacity: number;
}

/** `store` section of the study file, in SI. */
export interface StoreInputs {
  /** K between intake air and store at which charging starts and stops */
  readonly chargeStart: number;
  /** K at which charging stops */
  readonly chargeStop: number;
  /** degC of the intake air below which nothing is charged */
  readonly chargeAbove: number;
  /** K between store and house air at which discharging starts and stops */
  readonly dischargeStart: number;
  /** K at which discharging stops */
  readonly dischargeStop: number;
  /** degC of the house air below which the store is discharged */
  readonly dischargeBelow: number;
  /** s */
  readonly minimumRun: number;
  /** relative humidity of the house above which discharge waits unless it is near freezing, 0 to 1 */
  readonly humidityLockOut: number;
  /**
   * K the intake at the ridge is warmer than the house mean in full sun (800 W/m²); undefined:
   * estimated hour by hour
   */
  readonly stratification?: number | undefined;
  /** m³/s that circulation fans move between the upper and the lower half of the house */
  readonly mixingFlow: number;
  /** flow reversed on discharge */
  readonly reverse: boolean;
  /** number of slices along the tubes */
  readonly slices: number;
  /** years to run before the year that counts */
  readonly spinUpYears: number;
  /** m of soil outside the house and below the floor in the mesh */
  readonly outsideSoil: number;
  /** m of soil below the floor in the mesh */
  readonly meshDepth: number;
  /** true: no charging while the vents stand open; false or absent: the store is charged first */
  readonly ventsFirst?: boolean | undefined;
  /**
   * true: groundwater moves at the water table and holds the soil there at its undisturbed
   * temperature; false or absent: the soil conducts on as if dry
   */
  readonly groundWaterMoves?: boolean | undefined;
  /** days on which the fan may run: `15 Aug to 30 Apr`, `all year`, `never`; absent: all year */
  readonly fanSeason?: string | undefined;
  /** days on which it may charge, written likewise; absent: all year */
  readonly chargeSeason?: string | undefined;
  /** degC of the undisturbed ground at the depth of the tubes above which nothing is charged; absent: never */
  readonly chargeBelowGround?: number | undefined;
  /** degC between the tubes above which nothing is charged; absent: never */
  readonly maximumStore?: number | undefined;
  /** perforated dark plate as a hotter intake for charging; absent for none */
  readonly collector?: PlateCollector | undefined;
  /** another soil around the tubes; absent: the study's soil */
  readonly gravelBed?: GravelBed | undefined;
  /** m² K/W of a flat board below the floor, and its depth, m; absent for none */
  readonly flatBoardResistance?: number | undefined;
  /** m below the floor */
  readonly flatBoardDepth?: number | undefined;
}

const collectorFields: Fields<PlateCollector> = {
  place: choice("inside", "outside"),
  area: quantity,
  tilt: quantity,
  azimuth: quantityOr("facing", undefined),
  cover: id(findGlazing),
  ductLength: quantity,
  ductLoss: quantity,
  holeDiameter: quantity,
  pitch: quantity,
  absorptance: quantity,
  emissivity: quantity,
};

const gravelBedFields: Fields<GravelBed> = {
  margin: quantity,
  conductivity: quantity,
  heatCapacity: quantity,
};

/** Keys of the section. */
export const storeFields: Fields<StoreInputs> = {
  chargeStart: quantity,
  chargeStop: quantity,
  chargeAbove: quantity,
  dischargeStart: quantity,
  dischargeStop: quantity,
  dischargeBelow: quantity,
  minimumRun: quantity,
  humidityLockOut: quantity,
  stratification: quantityOr("estimate", undefined),
  mixingFlow: quantity,
  reverse: yesNo,
  slices: whole,
  spinUpYears: whole,
  outsideSoil: quantity,
  meshDepth: quantity,
  ventsFirst: yesNo,
  flatBoardResistance: quantityOr("none", undefined),
  flatBoardDepth: quantityOr("none", undefined),
  groundWaterMoves: yesNo,
  fanSeason: written(readSeason, "15 Aug to 30 Apr"),
  chargeSeason: written(readSeason, "15 Aug to 30 Apr"),
  chargeBelowGround: quantityOr("none", undefined),
  maximumStore: quantityOr("none", undefined),
  collector: part(collectorFields, undefined),
  gravelBed: part(gravelBedFields, undefined),
};
