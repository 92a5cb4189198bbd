/** The day ahead of a study: its calibrated model, its log, and the user's forecast. @module */
import { HOUR, HOURS_PER_YEAR } from "../../basics/mod.ts";
import type { StoreRequest } from "../../store/mod.ts";
import { type Ahead, dayAhead } from "../ahead/day_ahead.ts";
import { readForecast } from "../ahead/forecast.ts";
import type { WeatherSpan } from "../ahead/weather_span.ts";
import { builtRequest } from "../demo/known_truth.ts";
import type { LogTexts } from "../fields.ts";
import type { LogText } from "../log_texts.ts";
import { fromFullHour } from "../logged_season.ts";
import { NO_LOGS } from "../reasons.ts";
import { readStudyLog } from "../study_log.ts";
import { type LoggedHouse, loggedHouse } from "./logged_house.ts";
import { loggedWeather } from "./replay.ts";
import { type CalibratedStudy, calibrationTakes } from "./takes.ts";
import type { StoreEarlier } from "../../store/takes.ts";
import type { Calibration, ModelFactors, StageSetting } from "./types.ts";

/** What the day ahead is asked from. */
export interface TomorrowRequest {
  /** map and logs; null where the study names none */
  readonly texts: LogTexts | null;
  /** forecast; null where the study names none */
  readonly forecast: LogText | null;
  /** place and fan; null without logs */
  readonly setting: StageSetting | null;
  /** the study's store on few slices; null without logs */
  readonly plan: StoreRequest | null;
  /** ratios of the calibrated model to the study */
  readonly factors: ModelFactors;
  /** W of the heater; 0 for none */
  readonly heaterPower: number;
  /** K, logged less computed house air of night hours that no fit has seen */
  readonly residuals: readonly number[];
}

/** One hour ahead, for charts and tables. */
export interface AheadHour {
  /** ISO day and hour on the house's standard time */
  readonly time: string;
  /** degC outdoors, by the forecast */
  readonly outdoors: number;
  /** degC in the house as it is run: the fan may run, no heater */
  readonly inside: number;
  /** degC, lower end of its band */
  readonly low: number;
  /** degC, upper end of its band */
  readonly high: number;
  /** degC with the fan off */
  readonly withoutFan: number;
  /** degC with fan and heater */
  readonly heated: number;
  /** kW into the soil; negative while it comes back */
  readonly stored: number;
}

/** The coming days of a study. */
export interface Tomorrow {
  /** why there are none; null where there are */
  readonly reason: string | null;
  /** in four ways; null without */
  readonly ahead: Ahead | null;
  /** hour by hour */
  readonly hours: readonly AheadHour[];
  /** what was filled into the forecast, a sentence each */
  readonly remarks: readonly string[];
  /** number of logged hours that the model ran through before it looked ahead */
  readonly pastHours: number;
  /** W of the heater; 0 for one without limit */
  readonly heaterPower: number;
}

/** Only what the coming days hang on; another forecast leaves the calibration as it is. */
export function tomorrowTakes(
  study: CalibratedStudy,
  earlier: StoreEarlier & { readonly calibration: Calibration },
): TomorrowRequest {
  const { texts, setting, plan } = calibrationTakes(study, earlier);
  const { factors, nightResiduals } = earlier.calibration;
  return {
    texts,
    forecast: study.measured.texts?.forecast ?? null,
    setting,
    plan,
    factors,
    heaterPower: study.house.heaterPower,
    residuals: nightResiduals,
  };
}

/** h of log that the model runs through at most */
const LONGEST_PAST = 60 * 24;
/** h over which the air now is looked for */
const RECENT = 3;

function nothing(reason: string): Tomorrow {
  return { reason, ahead: null, hours: [], remarks: [], pastHours: 0, heaterPower: 0 };
}

const cutSpan = ({ start, ...series }: WeatherSpan, from: number, to: number): WeatherSpan => ({
  start: (start + from) % HOURS_PER_YEAR,
  dryBulb: series.dryBulb.subarray(from, to),
  relativeHumidity: series.relativeHumidity.subarray(from, to),
  globalHorizontal: series.globalHorizontal.subarray(from, to),
  windSpeed: series.windSpeed.subarray(from, to),
});

const localText = (seconds: number, timeZone: number) =>
  new Date(1000 * (seconds + timeZone * HOUR)).toISOString().slice(0, 16).replace("T", " ");

/** The last logged value of the hours before one; undefined where there is none. */
function recent(series: Float64Array | null, before: number): number | undefined {
  for (let hour = before - 1; hour >= Math.max(0, before - RECENT); hour--) {
    if (Number.isFinite(series?.[hour] ?? NaN)) return series![hour]!;
  }
  return undefined;
}

/** Place in the log of the hour in which a forecast starts; null where the log does not reach it. */
function nowIn(house: LoggedHouse, from: string, timeZone: number): number | null {
  const place = Array.from({ length: house.hours + 1 }, (_, hour) => hour)
    .find((hour) => localText(house.start + hour * HOUR, timeZone) === from);
  return place ?? null;
}

/**
 * The coming seven days by the calibrated model. The log up to the hour in which the forecast starts
 * brings house and ground to where they are; what was logged later is not looked at.
 *
 * @param request study, calibration, log, forecast
 * @throws {InputError} where the forecast cannot be read, or the log before it is too short
 */
export function lookAhead(request: TomorrowRequest): Tomorrow {
  const { texts, forecast, setting, plan, factors, heaterPower, residuals } = request;
  if (texts === null || setting === null || plan === null) return nothing(NO_LOGS);
  if (forecast === null) {
    return nothing('the study names no forecast (key "measured.forecast"): a CSV file by the hour');
  }
  const read = readForecast(forecast.text, { file: forecast.name, place: plan.climate.place });
  const house = loggedHouse(fromFullHour(readStudyLog(texts, setting)), setting, "never");
  if (house.series.outside === null) return nothing("the logs hold no outdoor temperature");
  const { timeZone } = setting;
  const now = nowIn(house, read.from, timeZone);
  if (now === null) {
    return nothing(
      `the forecast starts ${read.from}, and the log goes from ${
        localText(house.start, timeZone)
      } to ` +
        `${
          localText(house.start + house.hours * HOUR, timeZone)
        } on the house's standard time: it ` +
        "must start at the end of the log, or within it",
    );
  }
  const { span } = loggedWeather(house, plan.climate);
  const skipped = house.hours - span.dryBulb.length;
  const to = now - skipped;
  const past = cutSpan(span, Math.max(0, to - LONGEST_PAST), to);
  const { inside, insideHumidity, store } = house.series;
  const [temperature, humidity] = [recent(inside, now), recent(insideHumidity, now)];
  const storeNow = recent(store, now);
  const ahead = dayAhead({
    request: builtRequest(plan, factors),
    past,
    forecast: read,
    heaterPower,
    residuals,
    ...(temperature === undefined || humidity === undefined
      ? {}
      : { airNow: { temperature, humidity: Math.min(1, humidity) } }),
    ...(storeNow === undefined ? {} : { storeNow }),
  });
  const of = (fan: boolean, heater: boolean) =>
    ahead.courses.find((one) => one.fan === fan && one.heater === heater)!;
  const [free, still, heated] = [of(true, false), of(false, false), of(true, true)];
  const begin = house.start + now * HOUR;
  return {
    reason: null,
    ahead,
    hours: Array.from({ length: ahead.hours }, (_, k): AheadHour => ({
      time: localText(begin + k * HOUR, timeZone),
      outdoors: ahead.outdoors[k]!,
      inside: free.air[k]!,
      low: free.air[k]! + Math.min(0, ahead.band.low),
      high: free.air[k]! + Math.max(0, ahead.band.high),
      withoutFan: still.air[k]!,
      heated: heated.air[k]!,
      stored: free.heat[k]! / 1000,
    })),
    remarks: read.remarks,
    pastHours: past.dryBulb.length,
    heaterPower,
  };
}
