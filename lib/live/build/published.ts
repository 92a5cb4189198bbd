/** The year of a run as a live page prints it. @module */
import { dayRanges } from "../../basics/mod.ts";
import type { ChapterResults } from "../../study/chapters.ts";
import type { Study } from "../../study/types.ts";
import type { LiveYear } from "../types.ts";

const coldestOfDays = (series: Float64Array) => dayRanges(series).map(({ low }) => low);

/**
 * The figures of the store chapter, and the days and months its charts are drawn from.
 *
 * @param study that was run
 * @param results of its fan and its store
 */
export function publishedYear(
  study: Study,
  { fan, store }: Pick<ChapterResults, "fan" | "store">,
): LiveYear {
  const { heatIn, heatOut, fanEnergy, backupHeat, backupHeatNoFan, savedHeat } = store;
  return {
    figures: {
      airFlow: fan.airFlow,
      heatIn,
      heatOut,
      fanEnergy,
      coldestHour: store.coldestHour,
      coldestHourNoFan: store.coldestHourNoFan,
      hoursBelowFreezing: store.crop.freezing.hours,
      hoursBelowFreezingNoFan: store.cropNoFan.freezing.hours,
      backupHeat,
      backupHeatNoFan,
      savedHeat,
    },
    days: {
      outdoors: coldestOfDays(study.climate.dryBulb),
      store: coldestOfDays(store.year.house.airTemperature),
      noFan: coldestOfDays(store.noFan.airTemperature),
    },
    months: {
      store: store.months.map((month) => month.backupHeat),
      noFan: store.months.map((month) => month.backupHeatNoFan),
    },
    slices: store.slices,
    notices: [],
  };
}
