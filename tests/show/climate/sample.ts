/** A made-up climate. */
import type { ClimateResult, ClimateYear } from "../../../lib/climate/types.ts";
import { daytime, hourly, made, season } from "../made.ts";

export const outdoors = hourly((hour) => 2 + 18 * season(hour) + 5 * daytime(hour));
export const radiation = hourly((hour) => (450 + 350 * season(hour)) * daytime(hour));
export const zeros = hourly(() => 0);

export const climateYear = made<ClimateYear>({
  place: { name: "Sample", latitude: 50, longitude: 0, elevation: 0, timeZone: 0 },
  source: "made up",
  layout: "columns",
  dryBulb: outdoors,
  relativeHumidity: hourly(() => 0.7),
  globalHorizontal: radiation,
  directNormal: radiation,
  diffuseHorizontal: zeros,
  windSpeed: zeros,
  pressure: hourly(() => 101325),
  skyLongwave: null,
  notices: [],
});

export const climateResult = made<ClimateResult>({
  months: Array.from({ length: 12 }, (_, index) => ({
    month: index + 1,
    meanTemperature: -16 + 3 * index,
    minTemperature: -30 + 3 * index,
    maxTemperature: -5 + 3 * index,
    globalRadiation: 40 + 10 * index,
    diffuseRadiation: 16 + 4 * index,
    diffuseShare: 0.4,
    meanRelativeHumidity: 0.7,
    meanWindSpeed: 4,
    heatingDegreeDays18: 500,
  })),
  meanTemperature: 2.5,
  coldestHour: -33,
  warmestHour: 35,
  design99_6: -29,
  design99: -26,
  heatingDegreeDays18: 5900,
  globalRadiation: 1350,
  winterRadiation: 240,
  summerRadiation: 300,
  hoursBelow: [{ limit: 0, hours: 3000 }, { limit: 10, hours: 5000 }],
  coldSpells: [],
  notices: [],
});
