/** What the store chapter takes and gives. @module */
import type { Notice } from "../basics/mod.ts";
import type { HouseYear } from "../house/types.ts";

/** `store` section of the study file, in SI. */
export interface StoreInputs {
  /** K between intake air and store at which charging starts and stops */
  readonly chargeStart: number;
  readonly chargeStop: number;
  /** degC of the intake air below which nothing is charged */
  readonly chargeAbove: number;
  /** K between store and house air at which discharging starts and stops */
  readonly dischargeStart: number;
  readonly dischargeStop: number;
  /** degC of the house air below which the store is discharged */
  readonly dischargeBelow: number;
  /** s */
  readonly minimumRun: number;
  /** relative humidity of the house above which discharge waits unless it is near freezing, 0 to 1 */
  readonly humidityLockOut: number;
  /** K the intake at the ridge is warmer than the house mean in full sun (800 W/m²) */
  readonly stratification: number;
  /** flow reversed on discharge */
  readonly reverse: boolean;
  /** slices along the tubes */
  readonly slices: number;
  /** years to run before the year that counts */
  readonly spinUpYears: number;
  /** m of soil outside the house and below the floor in the mesh */
  readonly outsideSoil: number;
  readonly meshDepth: number;
}

/** Hourly year of the store, 8760 each; heat flows in W, positive into the soil unless said. */
export interface StoreYear {
  readonly house: HouseYear;
  /** sensible heat from air into tube walls (charge > 0, discharge < 0) */
  readonly sensible: Float64Array;
  /** latent heat into the walls (condensing > 0, evaporating < 0) */
  readonly latent: Float64Array;
  readonly intakeTemperature: Float64Array;
  readonly outletTemperature: Float64Array;
  /** mean temperature of the soil between the tubes, degC */
  readonly storeTemperature: Float64Array;
  /** share of the hour the fan ran, signed: + charge, − discharge */
  readonly fanShare: Float64Array;
  /** W electric, mean over the hour */
  readonly fanPower: Float64Array;
  /** kg/h condensed (+) or evaporated (−) in the tubes */
  readonly condensate: Float64Array;
  /** heat from the house into the floor surface */
  readonly floor: Float64Array;
}

/** Result of the store chapter. */
export interface StoreResult {
  readonly year: StoreYear;
  /** same soil and house, fan never on */
  readonly noFan: HouseYear;
  /** kWh a year; in and out of the tube walls, sensible + latent */
  readonly heatIn: number;
  readonly heatOut: number;
  readonly latentIn: number;
  readonly latentOut: number;
  /** heatOut / heatIn */
  readonly recovery: number;
  /** (heatIn + heatOut) / fan energy is not a COP; this is heatOut / fan energy of the year */
  readonly cop: number;
  /** kWh of fan energy a year */
  readonly fanEnergy: number;
  /** share of the heat given back that was put in during an earlier quarter, 0 to 1 */
  readonly carriedAcrossSeasons: number;
  /** quarters[given back in][put in during]; kWh; last column: undisturbed ground */
  readonly quarters: readonly (readonly number[])[];
  readonly coldestHour: number;
  readonly hoursBelowFreezing: number;
  readonly firstFreeze: number | null;
  /** kWh a year to keep the heating set point with the store */
  readonly backupHeat: number;
  /** relative: (heat in − heat out − losses − change of content) / throughput */
  readonly balanceResidual: number;
  readonly notices: readonly Notice[];
}
