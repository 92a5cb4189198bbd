/** The next days of a house and its store, from its logged past and a forecast. @module */
import { quantile } from "d3-array";
import { HOUR, HOURS_PER_YEAR, InputError, KILOWATT_HOUR } from "../../basics/mod.ts";
import { humidityRatioFromRelativeHumidity } from "../../air/mod.ts";
import { findCrop, houseModel, initialHouseState, withHeater } from "../../house/mod.ts";
import { JUMPS_FROM_AFAR, settledSetting, settlingOf } from "../../store/seasons/settled_year.ts";
import { freshEngine, soilModel } from "../../store/seasons/soil_model.ts";
import { periodicYear } from "../../store/seasons/spin_up.ts";
import { runYear, startState, type YearState } from "../../store/seasons/year.ts";
import type { StoreRequest } from "../../store/mod.ts";
import { type ChargingSpell, chargingSpells } from "./charging.ts";
import { type WeatherSpan, yearWith } from "./weather_span.ts";

/** What the coming days are asked from. */
export interface AheadQuestion {
  /** study and results of its chapters, calibrated */
  readonly request: StoreRequest;
  /** weather logged up to now, some weeks: they bring house and ground to where they are */
  readonly past: WeatherSpan;
  /** forecast from now on; of more than seven days the first seven count */
  readonly forecast: WeatherSpan;
  /** W of the heater; 0 for none, then it is taken as without limit */
  readonly heaterPower: number;
  /**
   * K, measured less computed air temperature of hours that no fit has seen, those of the night where
   * frost matters; the band about each line comes from them. Empty: no band
   */
  readonly residuals: ArrayLike<number>;
  /** degC and 0 to 1 of the house now, as logged; the run's own where left out */
  readonly airNow?: { readonly temperature: number; readonly humidity: number };
  /** degC between the tubes now, as logged: what the run says is set beside it */
  readonly storeNow?: number;
}

/** One way through the coming days. */
export interface AheadCourse {
  /** whether the store's fan may run */
  readonly fan: boolean;
  /** whether the heater may run */
  readonly heater: boolean;
  /** degC of the house, mean of each hour */
  readonly air: Float64Array;
  /** W of the heater, mean of each hour */
  readonly heaterPower: Float64Array;
  /** W from the air into the soil, sensible and latent, mean of each hour; negative while it comes back */
  readonly heat: Float64Array;
  /** W of the fan, mean of each hour */
  readonly fanPower: Float64Array;
  /** degC, lowest hour */
  readonly coldestHour: number;
  /** kWh that the heater gives */
  readonly heaterEnergy: number;
  /** kWh of the fan */
  readonly fanEnergy: number;
}

/** When the house falls below a limit; hours ahead, from 0 for the first; null where it does not. */
export interface FrostWarning {
  /** what happens there */
  readonly name: string;
  /** degC */
  readonly limit: number;
  /** whether the fan may run */
  readonly fan: boolean;
  /** whether the heater may run */
  readonly heater: boolean;
  /** hours to the first hour in which the lower end of the band is below the limit; null: never */
  readonly possible: number | null;
  /** hours to the first hour in which the line itself is; null: never */
  readonly likely: number | null;
  /** hours to the first hour in which the whole band is; null: never */
  readonly nearlyCertain: number | null;
}

/** The coming days. */
export interface Ahead {
  /** hour of the 365-day year at which they start, index from 0 */
  readonly start: number;
  /** number of hours */
  readonly hours: number;
  /** degC outdoors, by the forecast */
  readonly outdoors: Float64Array;
  /** with and without fan, with and without heater */
  readonly courses: readonly AheadCourse[];
  /** by limit and course, the limits from 0 degC down */
  readonly warnings: readonly FrostWarning[];
  /** spells in which charging pays, the best first */
  readonly charging: readonly ChargingSpell[];
  /** K to add to a line for the lower and the upper end of its band: 5 % of the residuals lie beyond each */
  readonly band: { readonly low: number; readonly high: number };
  /** degC between the tubes at the start, by the run */
  readonly store: number;
  /** K, the run's less the logged store temperature; null where none was given */
  readonly storeGap: number | null;
}

/** h that are looked ahead */
const LOOK_AHEAD = 7 * 24;
/** h of past that bring house and shallow soil to where they are: the fewest */
const LEAST_PAST = 14 * 24;

/**
 * House and store through the coming days in four ways. The state now is found by running the model over
 * the logged past weather, from ground that is settled under the study's year; with two weeks or more of
 * it the soil about the tubes has forgotten where it started to a fraction of a kelvin (docs/measured.md).
 *
 * @param question study, past, forecast
 * @throws InputError where the past is too short or does not reach to the forecast
 */
export function dayAhead(question: AheadQuestion): Ahead {
  const { past, forecast, residuals } = question;
  const count = past.dryBulb.length;
  const now = (past.start + count) % HOURS_PER_YEAR;
  if (count < LEAST_PAST || forecast.start !== now) {
    throw new InputError(
      `day ahead: ${count} logged hours, the forecast starts ${
        (forecast.start - now + HOURS_PER_YEAR) % HOURS_PER_YEAR
      } hours after they end; expected ${LEAST_PAST} logged hours or more, and a forecast from the hour at ` +
        "which they end",
    );
  }
  const hours = Math.min(LOOK_AHEAD, forecast.dryBulb.length);
  const run = prepared(question);
  const courses = [true, false].flatMap((fan) =>
    [false, true].map((heater) => run.course(fan, heater, hours))
  );
  const spread = Array.from(residuals).filter(Number.isFinite);
  const band = spread.length > 0
    ? { low: quantile(spread, 0.05)!, high: quantile(spread, 0.95)! }
    : { low: 0, high: 0 };
  const crop = findCrop(question.request.houseInputs.crop);
  const limits = [
    { name: "frost in the house", limit: 0 },
    { name: `${crop.name} damaged`, limit: crop.damageLimit },
    { name: `${crop.name} killed`, limit: crop.killingLimit },
  ].sort((a, b) => b.limit - a.limit);
  const free = courses.find(({ fan, heater }) => fan && !heater)!;
  return {
    start: forecast.start,
    hours,
    outdoors: forecast.dryBulb.slice(0, hours),
    courses,
    warnings: limits.flatMap((limit) => courses.map((course) => warningOf(course, limit, band))),
    charging: chargingSpells(free.heat, free.fanPower),
    band,
    store: run.store,
    storeGap: question.storeNow === undefined ? null : run.store - question.storeNow,
  };
}

function warningOf(
  { fan, heater, air }: AheadCourse,
  { name, limit }: { readonly name: string; readonly limit: number },
  band: Ahead["band"],
): FrostWarning {
  const first = (added: number) => {
    const place = air.findIndex((one) => one + added < limit);
    return place < 0 ? null : place;
  };
  return {
    name,
    limit,
    fan,
    heater,
    possible: first(Math.min(0, band.low)),
    likely: first(0),
    nearlyCertain: first(Math.max(0, band.high)),
  };
}

/** House and ground brought to now, ready for each way. */
function prepared({ request, past, forecast, heaterPower, airNow }: AheadQuestion) {
  const climate = yearWith(request.climate, [past, forecast]);
  const own = { ...request, climate: { ...request.climate } };
  const settledHouse = withHeater(houseModel(request.houseInputs, request.climate), heaterPower);
  const model = soilModel(request, settledHouse);
  const engine = freshEngine(model);
  const state = startState(model.site, engine, initialHouseState(settledHouse));
  const given = { request: own, model, house: settledHouse, fan: true };
  const setting = settledSetting(given);
  const settling = settlingOf(given);
  periodicYear({ setting, state, engine, settling, jumps: JUMPS_FROM_AFAR });
  if (past.start > 0) runYear({ ...setting, from: 0, hours: past.start }, state);
  const house = houseModel(request.houseInputs, climate);
  const weathered = { ...setting, climate };
  runYear(
    {
      ...weathered,
      house: withHeater(house, heaterPower),
      from: past.start,
      hours: past.dryBulb.length,
    },
    state,
  );
  if (airNow !== undefined) {
    state.house = {
      ...state.house,
      airTemperature: airNow.temperature,
      humidityRatio: humidityRatioFromRelativeHumidity(
        airNow.temperature,
        airNow.humidity,
        house.pressure,
      ),
    };
  }
  const soil = engine.save();
  const kept = {
    house: { ...state.house },
    control: { ...state.control },
    water: state.water.slice(),
    owed: state.owed,
    vapourOwed: state.vapourOwed,
  };
  const store = meanOf(engine.storeTemperature.subarray(0, model.site.slices));
  const course = (fan: boolean, heater: boolean, hours: number): AheadCourse => {
    engine.load(soil);
    const fresh: YearState = {
      engine,
      house: { ...kept.house },
      control: fan ? { ...kept.control } : { mode: 0, lasted: Infinity },
      water: kept.water.slice(),
      owed: fan ? kept.owed : 0,
      vapourOwed: fan ? kept.vapourOwed : 0,
    };
    const series = () => new Float64Array(hours);
    const found = { air: series(), heaterPower: series(), heat: series(), fanPower: series() };
    const power = heater ? (heaterPower > 0 ? heaterPower : Infinity) : 0;
    runYear(
      { ...weathered, house: withHeater(house, power), fan, from: forecast.start, hours },
      fresh,
      (report) => {
        const k = (report.hour - forecast.start + HOURS_PER_YEAR) % HOURS_PER_YEAR;
        const share = report.seconds / HOUR;
        found.air[k]! += report.house.mean.airTemperature * share;
        found.heaterPower[k]! += report.house.flows.heater * share;
        found.heat[k]! += (report.sensible + report.latent) * share;
        found.fanPower[k]! += report.fanPower * share;
      },
    );
    const energy = (power: Float64Array) =>
      power.reduce((sum, one) => sum + one, 0) * HOUR / KILOWATT_HOUR;
    return {
      fan,
      heater,
      ...found,
      coldestHour: Math.min(...found.air),
      heaterEnergy: energy(found.heaterPower),
      fanEnergy: energy(found.fanPower),
    };
  };
  return { course, store };
}

function meanOf(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum / values.length;
}
