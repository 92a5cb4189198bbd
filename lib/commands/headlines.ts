/** The figures a person reads first, shown as they come. @module */
import type { ChapterName, Figures } from "../basics/mod.ts";
import { figureTexts } from "../show/study/figures_table.ts";

/** What is read first of each chapter. */
const HEADLINES: Readonly<Partial<Record<ChapterName, readonly string[]>>> = {
  climate: ["climate.meanTemperature", "climate.coldestHour"],
  soil: ["soil.meanTemperature"],
  house: ["house.peakHeatLoss"],
  tubes: ["tubes.count", "tubes.totalLength"],
  headers: ["headers.unevenness"],
  fan: ["fan.airFlow", "fan.power"],
  store: [
    "store.coldestHour",
    "house.coldestHourNoStore",
    "store.hoursBelowFreezing",
    "store.savedHeat",
    "store.backupHeat",
    "fan.energyPerYear",
  ],
  worth: ["worth.verdict", "worth.netPresentValue"],
};

/**
 * Lines for the terminal: label, value in SI, and in US units where those differ.
 *
 * @param chapter whose result has come
 * @param figures its figures
 */
export function headlines(chapter: ChapterName, figures: Figures): string[] {
  return (HEADLINES[chapter] ?? []).flatMap((key) => {
    const figure = figures[key];
    if (figure === undefined) return [];
    const [si, us] = figureTexts(key, figure);
    return [`  ${figure.label}: ${us === "" || us === si ? si : `${si} (${us})`}`];
  });
}
