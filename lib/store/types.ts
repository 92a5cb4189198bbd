/** What the store chapter takes and gives. @module */
import type { Notice } from "../basics/mod.ts";
import type { CropYear, DampHours, HouseYear } from "../house/mod.ts";

import type { CutStates } from "./cut_states.ts";

export type { GravelBed, StoreInputs } from "./fields.ts";

/** Hourly year of the store, 8760 each; heat flows in W, positive into the soil unless said. */
export interface StoreYear {
  /** the house in the same hours; its flows are positive into the house */
  readonly house: HouseYear;
  /** sensible heat from air into tube walls (charge > 0, discharge < 0) */
  readonly sensible: Float64Array;
  /** latent heat into the walls (condensing > 0, evaporating < 0) */
  readonly latent: Float64Array;
  /** sensible heat into the walls while charging */
  readonly sensibleIn: Float64Array;
  /** latent heat into the walls while charging, less what evaporates */
  readonly latentIn: Float64Array;
  /** sensible heat out of the walls while discharging, counted positive */
  readonly sensibleOut: Float64Array;
  /** latent heat out of the walls while discharging, less what condenses, counted positive */
  readonly latentOut: Float64Array;
  /** degC of the air drawn in while the fan ran, before the fan's heat; NaN in hours in which it rested */
  readonly intakeTemperature: Float64Array;
  /** degC of the air blown out while the fan ran; NaN in hours in which it rested */
  readonly outletTemperature: Float64Array;
  /** W/K, heat capacity rate of the air through the tubes, mean of the hour */
  readonly airRate: Float64Array;
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

/** One row of the table by month, kWh unless said. */
export interface StoreMonth {
  /** 1 to 12 */
  readonly month: number;
  /** kWh put in */
  readonly heatIn: number;
  /** kWh given back */
  readonly heatOut: number;
  /** latent heat put in, kWh */
  readonly latentIn: number;
  /** latent heat given back, kWh */
  readonly latentOut: number;
  /** kWh of electricity */
  readonly fanEnergy: number;
  /** degC, mean between the tubes */
  readonly storeTemperature: number;
  /** kWh of back-up heat with the store */
  readonly backupHeat: number;
  /** kWh of back-up heat on the same ground with the fan always off */
  readonly backupHeatNoFan: number;
}

/** What became of the heat put in during one quarter, kWh. */
export interface TaggedQuarter {
  /** kWh put in */
  readonly putIn: number;
  /** by the tubes, in all quarters */
  readonly givenBack: number;
  /** of that, in the quarter it was put in */
  readonly sameQuarter: number;
  /** through the floor into the house */
  readonly throughFloor: number;
  /** to the outside ground and below */
  readonly lost: number;
  /** still there at the year's end more than at its start */
  readonly remaining: number;
}

/** A sunless cold spell from the store's state on 1 December, house held at its set point. */
export interface EmptyingSpell {
  /** degC outside, held through the spell, no sun */
  readonly outside: number;
  /** h until the heat given back falls below half and a tenth of its first six hours; null if not in 60 days */
  readonly hoursToHalf: number | null;
  /** h until a tenth is left; null where that is not reached */
  readonly hoursToTenth: number | null;
  /** kWh given back until then (or in 60 days) */
  readonly heatOut: number;
  /** kWh of back-up heat in the first three days, with the fan */
  readonly backupHeat: number;
  /** the same without the fan, kWh */
  readonly backupHeatNoFan: number;
}

/** Freezing of the soil under the house in the settled year. */
export interface FreezingYear {
  /** degC, lowest hourly mean between the tubes */
  readonly coldest: number;
  /** h a year below 0 °C between the tubes */
  readonly hoursBelowFreezing: number;
  /** kWh, most heat that the freezing soil under the floor has set free at a time */
  readonly latentHeat: number;
  /** m of the study's soil under the floor that this heat would freeze through */
  readonly frozenDepth: number;
  /** hour index at which most is frozen */
  readonly mostFrozen: number;
  /** h a year with ice under the floor */
  readonly hoursFrozen: number;
}

/** The soil across the middle of the tubes, thinned for a map. */
export interface SoilSection {
  /** m, centres of the columns from the middle of the house, and of the rows below the surface */
  readonly x: readonly number[];
  /** m below the floor */
  readonly depths: readonly number[];
  /** day of the year of each picture */
  readonly days: readonly number[];
  /** degC, temperature[picture][row·columns + column] */
  readonly temperatures: readonly Float64Array[];
}

/** A flow of the year's heat for a flow picture, kWh. */
export interface HeatFlow {
  /** where it comes from */
  readonly from: string;
  /** end of the path */
  readonly to: string;
  /** kWh */
  readonly heat: number;
}

/** One plain year after building, soil undisturbed at the start. */
export interface EarlyYear {
  /** 1, 2, 3 … */
  readonly year: number;
  /** kWh */
  readonly heatIn: number;
  /** kWh given back */
  readonly heatOut: number;
}

/** Result of the store chapter. */
export interface StoreResult {
  /** hourly year */
  readonly year: StoreYear;
  /** the baseline: same house, fan always off, on its own settled ground */
  readonly noFan: HouseYear;
  /** kWh a year; in and out of the tube walls, sensible + latent */
  readonly heatIn: number;
  /** kWh given back */
  readonly heatOut: number;
  /** latent heat put in, kWh */
  readonly latentIn: number;
  /** latent heat given back, kWh */
  readonly latentOut: number;
  /** gross ratio heatOut / heatIn, whatever warmed the soil that gave it; null where nothing is put in */
  readonly recovery: number | null;
  /** gross: heatOut / fan energy of the year; null where the fan never runs */
  readonly cop: number | null;
  /** kWh of fan energy a year */
  readonly fanEnergy: number;
  /** share of the heat given back that was put in during an earlier quarter, 0 to 1; null where nothing is given back */
  readonly carriedAcrossSeasons: number | null;
  /** quarters[given back in][put in during]; kWh; last column: undisturbed ground */
  readonly quarters: readonly (readonly number[])[];
  /** by quarter put in */
  readonly tagged: readonly TaggedQuarter[];
  /** degC, with the store */
  readonly coldestHour: number;
  /** degC, with the fan always off */
  readonly coldestHourNoFan: number;
  /** the year against freezing and the crop's limits, with the store */
  readonly crop: CropYear;
  /** the same with the fan always off */
  readonly cropNoFan: CropYear;
  /** hours of damp air and of dripping cover, with the store */
  readonly damp: DampHours;
  /** the same with the fan always off */
  readonly dampNoFan: DampHours;
  /** kWh a year of back-up heat that the store saves: fan always off minus with the store */
  readonly savedHeat: number;
  /** ratio of savedHeat to the electricity of the fans; 0 where they never run; null where the fan never runs */
  readonly savedHeatPerFanEnergy: number | null;
  /** share of the heat put in through the tubes that comes back through them, 0 to 1; null where nothing is put in */
  readonly taggedReturn: number | null;
  /** kWh a year that leave the soil for the ground and air outdoors */
  readonly edgeLoss: number;
  /** the same with the fan always off, kWh */
  readonly edgeLossNoFan: number;
  /** kWh a year that a plate collector gives the charging air; 0 without one */
  readonly collectedHeat: number;
  /** kWh a year to keep the heating set point with the store */
  readonly backupHeat: number;
  /** kWh a year to keep the heating set point with the fan always off */
  readonly backupHeatNoFan: number;
  /** kWh a year of the fans' electricity while the heater keeps the set point */
  readonly backupFanEnergy: number;
  /** hourly back-up heat with the store, W */
  readonly backupYear: HouseYear;
  /** hourly back-up heat with the fan always off, W */
  readonly heaterNoFan: Float64Array;
  /** relative: (heat in − heat out − losses − change of content) / throughput */
  readonly balanceResidual: number;
  /** January to December */
  readonly months: readonly StoreMonth[];
  /** the first years as they come */
  readonly earlyYears: readonly EarlyYear[];
  /** plain years until the heat given back is within 2 % of the year that repeats */
  readonly yearsUntilPeriodic: number;
  /** kWh a year through the floor into the soil, from outside and from below, with the store */
  readonly floorHeat: number;
  /** kWh to the outdoor air */
  readonly outdoorHeat: number;
  /** kWh to the ground below */
  readonly deepHeat: number;
  /** kg a year condensed in the tubes and drained from them; evaporated in the house */
  readonly condensed: number;
  /** kg a year that runs off */
  readonly drained: number;
  /** water evaporated, kg */
  readonly evaporated: number;
  /** h a year */
  readonly chargeHours: number;
  /** h of discharging */
  readonly dischargeHours: number;
  /** K: house with fan less house without, mean of the hours below 8 degC outside and no sun; null without such hours */
  readonly nightLift: number | null;
  /** 0 to 1 by hour: store temperature between its lowest and highest of the year */
  readonly stateOfCharge: Float64Array;
  /** house and ground at the hours at which a power cut is tried, for the extra powerCut */
  readonly cutStates: CutStates;
  /** how fast it empties in a cold spell */
  readonly emptying: EmptyingSpell;
  /** null where nothing freezes under the floor */
  readonly freezing: FreezingYear | null;
  /** soil temperatures across the field */
  readonly sections: SoilSection;
  /** mean heat flows of the step */
  readonly flows: readonly HeatFlow[];
  /** lowest temperature of the soil around the tubes in the year, degC */
  readonly coldestSoil: number;
  /** number of cells of one slice */
  readonly cells: number;
  /** number of slices along the tubes */
  readonly slices: number;
  /** number of states kept of each slice */
  readonly states: number;
  /** messages for the reader */
  readonly notices: readonly Notice[];
}
