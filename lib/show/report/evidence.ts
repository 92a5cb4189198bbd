/** What the report rests on: place and weather, soil, house. @module */
import type { Figures } from "../../basics/mod.ts";
import type { ChapterResults, Study } from "../../study/mod.ts";
import { showNumber } from "../../units/mod.ts";
import { monthlyChart } from "../climate/charts.ts";
import { lossesChart } from "../house/charts.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { forReport } from "../kit/layout.ts";
import { shown } from "../kit/reader.ts";
import { type NamedNumber, numbers, paragraph, table } from "../kit/table.ts";
import { profileChart } from "../soil/charts.ts";

/** The question of the study. */
export function goal({ heading }: Study): DisplayItem {
  return paragraph(heading.question);
}

/** Place and weather, the source first. */
export function siteTable({ climate: weather }: Study, { climate }: ChapterResults): DisplayItem {
  const { place, source, layout } = weather;
  const week = climate.coldSpells.find(({ length }) => length === 7);
  const rows: NamedNumber[] = [
    { label: "place", value: place.name },
    {
      label: "latitude, longitude",
      value: `${showNumber(place.latitude, 2)}°, ${showNumber(place.longitude, 2)}°`,
    },
    { label: "elevation", value: place.elevation, kind: "length" },
    { label: "weather", value: `${source} (read as ${layout})` },
    { label: "mean outdoors", value: climate.meanTemperature, kind: "temperature" },
    { label: "coldest hour", value: climate.coldestHour, kind: "temperature" },
    { label: "exceeded in 99.6 % of the year", value: climate.design99_6, kind: "temperature" },
    {
      label: `degree-days below ${shown(18, "temperature", 0)}`,
      value: climate.heatingDegreeDays18,
      kind: "degreeDays",
    },
    { label: "sun on the level, a year", value: climate.globalRadiation, kind: "radiation" },
    ...(week === undefined ? [] : [
      { label: "worst sunless week, mean", value: week.meanTemperature, kind: "temperature" },
      { label: "sun in it, a day", value: week.globalRadiation, kind: "dailyRadiation" },
    ] satisfies NamedNumber[]),
  ];
  return forReport(() => numbers(rows, "Place and weather"));
}

/** The year at the site, month by month. */
export function siteChart({ climate }: ChapterResults): DisplayItem {
  return forReport(() => monthlyChart(climate));
}

/** What is known of the soil and from where, with ranges. */
export function soilTable(
  { soil: given }: Study,
  { soil }: ChapterResults,
  figures: Figures,
): DisplayItem {
  const { properties } = soil;
  const [low, high] = properties.conductivityRange;
  const band = (key: string, kind: "temperature" | "depth") => {
    const figure = figures[key];
    return figure?.low === undefined || figure.high === undefined
      ? ""
      : `${shown(figure.low, kind)} to ${shown(figure.high, kind)}`;
  };
  const rows: NamedNumber[] = [
    { label: "texture", value: given.texture, note: "given" },
    { label: "dry density", value: given.dryDensity, kind: "soilDensity", note: "given" },
    { label: "water by volume", value: given.moisture, kind: "share", note: "given" },
    {
      label: "conductivity",
      value: properties.conductivity,
      kind: "conductivity",
      note: `${given.measuredConductivity === null ? "estimated" : "measured"}; plausible ${
        shown(low, "conductivity")
      } to ${shown(high, "conductivity")}`,
    },
    {
      label: "heat capacity",
      value: properties.heatCapacity,
      kind: "volumetricHeatCapacity",
      note: "estimated",
    },
    {
      label: "highest water table",
      value: given.waterTableDepth,
      kind: "depth",
      note: given.waterTableDepth === null ? "not known: ask before digging" : "given",
    },
    {
      label: "mean of the undisturbed ground",
      value: soil.wave.mean,
      kind: "temperature",
      note: band("soil.meanTemperature", "temperature"),
    },
    {
      label: "frost in open ground",
      value: soil.frostDepth,
      kind: "depth",
      note: band("soil.frostDepth", "depth"),
    },
    {
      label: "lowest at the tubes",
      value: soil.temperatureAtTubeDepthMin,
      kind: "temperature",
      note: band("soil.temperatureAtTubeDepthMin", "temperature"),
    },
    {
      label: "highest at the tubes",
      value: soil.temperatureAtTubeDepthMax,
      kind: "temperature",
      note: band("soil.temperatureAtTubeDepthMax", "temperature"),
    },
  ];
  return forReport(() => numbers(rows, "Evidence of the soil; ranges are 95 % unless named"));
}

/** The ground over depth. */
export function soilChart({ soil }: ChapterResults): DisplayItem {
  return forReport(() => profileChart(soil));
}

/** The skin of the house with what each part loses. */
export function houseTable({ house }: ChapterResults): DisplayItem {
  const rows = [
    ...house.summary.losses,
    { name: "total", area: null, transmittance: null, conductance: house.lossCoefficient },
  ];
  return forReport(() =>
    table(rows, [
      { head: "part", value: ({ name }) => name },
      { head: "area", value: ({ area }) => area, kind: "area" },
      { head: "U", value: ({ transmittance }) => transmittance, kind: "transmittance" },
      { head: "U·A", value: ({ conductance }) => conductance, kind: "conductance", digits: 0 },
    ], "What the house loses: U by day, U·A at night with what is closed then")
  );
}

/** Where the heat goes. */
export function houseChart({ house }: ChapterResults): DisplayItem {
  return forReport(() => lossesChart(house));
}
