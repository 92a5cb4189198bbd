/** What the made-up winter really was: for grading, never for a notebook. @module */
import { HOUR } from "../../basics/mod.ts";
import { mean } from "d3-array";
import { leafAreaByHour } from "../../house/mod.ts";
import type { StoreRequest } from "../../store/mod.ts";
import type { KnownTruth } from "./known_truth.ts";
import { TRUE_STEP, type TrueYear } from "./true_year.ts";
import type { WinterSetting } from "./winter_rows.ts";

/** One true value. */
export interface TrueValue {
  /** key of the study file, or of a figure */
  readonly key: string;
  /** in `unit` */
  readonly value: number;
  /** unit as in the study file or in results.json */
  readonly unit: string;
  /** what it is */
  readonly meaning: string;
}

/**
 * True values of the house as built and of what its store did in the winter, gaps included.
 *
 * @param built request of the house as built
 * @param truth how it differs from the plan
 * @param year its true year
 * @param setting time of the log
 */
export function winterTruth(
  built: StoreRequest,
  truth: KnownTruth,
  year: TrueYear,
  { from, lasts }: Pick<WinterSetting, "from" | "lasts">,
): readonly TrueValue[] {
  const count = lasts / TRUE_STEP;
  const first = from / TRUE_STEP;
  const energy = (of: (place: number) => number) => {
    let sum = 0;
    for (let k = 0; k < count; k++) sum += of((first + k) % year.heat.length);
    return sum * TRUE_STEP / (1000 * HOUR);
  };
  const heatIn = energy((k) => Math.max(0, year.heat[k]!));
  const heatOut = energy((k) => Math.max(0, -year.heat[k]!));
  const fan = energy((k) => year.fanPower[k]!);
  const { properties } = built.soil;
  const night = nightLoss(year, built.climate, first, count);
  const leaves = leafAreaByHour(built.houseInputs.leafArea);
  const leafArea = Array.from(
    { length: lasts / HOUR },
    (_, k) => leaves[(from / HOUR + k) % leaves.length]!,
  );
  const value = (key: string, value: number, unit: string, meaning: string): TrueValue => ({
    key,
    value: Number(value.toPrecision(6)),
    unit,
    meaning,
  });
  return [
    value("house.leakage", built.houseInputs.leakage, "1/h", "air changes at rest"),
    value("house.leakageWind", built.houseInputs.leakageWind, "ach/(m/s)", "and with wind"),
    value("soil.conductivity", properties.conductivity, "W/(m K)", "of the unfrozen soil"),
    value("soil.diffusivity", properties.diffusivity, "m2/s", "of the unfrozen soil"),
    value("tubes.airFlow", built.fan.airFlow, "m3/s", "of the fans at the plan's air"),
    value("house.leafArea", mean(leafArea)!, "1", "over floor area, mean of the log"),
    value("quiet.lossCoefficient", night, "W/K", "skin and cracks, hours without sun"),
    value("change.leakage", truth.leakage, "1", "over the plan"),
    value("change.diffusivity", truth.diffusivity, "1", "over the plan"),
    value("change.airFlow", truth.airFlow, "1", "over the plan"),
    value("change.film", truth.film ?? 1, "1", "over the plan"),
    value("heatIn", heatIn, "kWh", "put into the tube walls, every hour of the log"),
    value("heatOut", heatOut, "kWh", "given back by them"),
    value("fanEnergy", fan, "kWh", "electricity of the fans"),
    value("cop", heatOut / fan, "1", "heat given back over electricity"),
  ];
}

/** W/K lost through skin and cracks in hours without sun, over the winter. */
function nightLoss(
  { loss, air }: TrueYear,
  { dryBulb, globalHorizontal }: StoreRequest["climate"],
  first: number,
  count: number,
): number {
  let [lost, difference] = [0, 0];
  for (let k = 0; k < count; k++) {
    const place = (first + k) % loss.length;
    const hour = Math.floor(place * TRUE_STEP / HOUR);
    if (globalHorizontal[hour]! > 0) continue;
    lost += loss[place]!;
    difference += air[place]! - dryBulb[hour]!;
  }
  return lost / difference;
}
