/** Tables of what the store chapter computes only when asked for. @module */
import { type ResultTable, resultTable, seriesColumns } from "../basics/mod.ts";
import { dateAfterMidsummer } from "../climate/dates.ts";
import type { FieldCandidate } from "../tubes/mod.ts";
import type { FieldSearch } from "./field_search.ts";
import type { FirstStep } from "./first_steps.ts";
import type { FirstYear } from "./first_years.ts";
import type { RankedMeasure } from "./ranking.ts";
import type { PowerCut } from "./power_cut.ts";
import type { RootZone } from "./root_zone.ts";
import type { SolarFan } from "./solar_fan.ts";
import type { StrongestHour } from "./tube_along.ts";
import type { StoreResolution } from "./resolution.ts";
import type { TubeCounts } from "./tube_count.ts";
import type { ComparedVariant } from "./variants/variants.ts";
import type { HouseWay } from "./variants/ways.ts";

/** With and without store and curtain. */
export function waysTables(ways: readonly HouseWay[]): ResultTable[] {
  const limits = ways[0]!.hoursBelow.map(({ limit }) => limit);
  return [
    resultTable("store-ways", ways, [
      ["house", "", (row) => row.name],
      ["coldest hour", "degC", (row) => row.coldestHour],
      [
        "first frost after 1 July",
        "",
        (row) => row.firstFreeze === null ? null : dateAfterMidsummer(row.firstFreeze),
      ],
      ...seriesColumns<HouseWay>(
        limits.map((limit) => `below ${limit} degC`),
        "h",
        (row, column) => row.hoursBelow[column]!.hours,
      ),
      ["back-up heat", "kWh", (row) => row.backupHeat],
      ["saved", "kWh", (row) => row.saved],
      ["saved by the store in this house", "kWh", (row) => row.savedByStore],
    ]),
  ];
}

/** What each improvement of the house and the store bring, the house as it is first. */
export function rankingTables(ranking: readonly RankedMeasure[]): ResultTable[] {
  return [
    resultTable("store-measures", ranking, [
      ["measure", "", (row) => row.name],
      ["kind", "", (row) => row.kind],
      ["change", "", (row) => row.change],
      ["heat demand", "kWh", (row) => row.heatDemand],
      ["saved", "kWh", (row) => row.saved],
      ["saved share", "1", (row) => row.savedShare],
      ["coldest hour without heat", "degC", (row) => row.coldestHour],
      ["coldest hour warmer by", "K", (row) => row.coldestHourGain],
      ["below freezing without heat", "h", (row) => row.hoursBelowFreezing],
      ["below the crop's killing limit without heat", "h", (row) => row.hoursBelowCropLimit],
    ]),
  ];
}

/** The store built or run otherwise. */
export function variantsTables(variants: readonly ComparedVariant[]): ResultTable[] {
  return [
    resultTable("store-variants", variants, [
      ["store", "", (row) => row.name],
      ["charged", "kWh", (row) => row.heatIn],
      ["discharged", "kWh", (row) => row.heatOut],
      ["fan", "kWh", (row) => row.fanEnergy],
      ["gross recovery", "1", (row) => row.recovery],
      ["discharged per fan energy", "1", (row) => row.cop],
      ["coldest hour", "degC", (row) => row.coldestHour],
      ["below freezing", "h", (row) => row.hoursBelowFreezing],
      ["back-up heat", "kWh", (row) => row.backupHeat],
      ["saved against the plan", "kWh", (row) => row.saved],
      ["saving resolved to", "kWh", (row) => row.savedResolution],
      ["coldest hour warmer by", "K", (row) => row.coldestHourGain],
      ["gain resolved to", "K", (row) => row.gainResolution],
    ]),
  ];
}

/** How far the figures move with one thing finer at a time, the study's own first. */
export function resolutionTables({ plan, planSize, rows }: StoreResolution): ResultTable[] {
  const own = { name: "as the study is run", figures: plan, moved: null, ...planSize };
  return [
    resultTable("store-resolution", [own, ...rows], [
      ["finer", "", (row) => row.name],
      ["soil cells of a slice", "1", (row) => row.cells],
      ["slices", "1", (row) => row.slices],
      ["longest step", "s", (row) => row.longestStep],
      ["charged", "kWh", (row) => row.figures.heatIn],
      ["discharged", "kWh", (row) => row.figures.heatOut],
      ["back-up heat saved", "kWh", (row) => row.figures.savedHeat],
      ["coldest hour", "degC", (row) => row.figures.coldestHour],
      ["coldest hour, fan always off", "degC", (row) => row.figures.coldestHourNoFan],
    ]),
  ];
}

/** Insulation or store first? */
export function firstStepsTables(steps: readonly FirstStep[]): ResultTable[] {
  return [
    resultTable("store-first-steps", steps, [
      ["step", "", (row) => row.name],
      ["kind", "", (row) => row.kind],
      ["heat saved", "kWh", (row) => row.saved],
      ["electricity used", "kWh", (row) => row.electricity],
      ["heat saved minus electricity", "kWh", (row) => row.net],
      ["coldest hour warmer by", "K", (row) => row.coldestHourGain],
    ]),
  ];
}

/** Beds with the store and with the fan always off, week by week. */
export function rootZoneTables({ days, depths }: RootZone): ResultTable[] {
  return [
    resultTable("store-root-zone", days, [
      ["day of the year from 0", "", (day) => day],
      ...depths.flatMap(({ depth, withStore, noStore }) =>
        seriesColumns<number>(
          [`${depth} m deep, with the store`, `${depth} m deep, fan always off`],
          "degC",
          (_, column, k) => [withStore, noStore][column]!.temperatures[k]!,
        )
      ),
    ]),
  ];
}

/** The first year under a house that has stood for years. */
export function existingHouseTables(year: FirstYear): ResultTable[] {
  return [
    resultTable("store-existing-house", [year], [
      ["year", "", (row) => row.year],
      ["charged", "kWh", (row) => row.heatIn],
      ["discharged", "kWh", (row) => row.heatOut],
    ]),
  ];
}

/** Panels and batteries for the fans, and their months. */
export function solarFanTables({ panels, months }: SolarFan): ResultTable[] {
  return [
    resultTable("fan-solar", panels, [
      ["panel, rated", "W", (row) => row.power],
      ["made in the year", "kWh", (row) => row.energy],
      ["charging met without a battery", "1", (row) => row.chargeShare],
      ["discharging met without a battery", "1", (row) => row.dischargeShare],
      ["battery for every hour, rated", "kWh", (row) => row.battery],
    ]),
    resultTable("fan-solar-months", months, [
      ["month", "", (row) => row.month + 1],
      ["fans", "kWh", (row) => row.fan],
      ["smallest panel", "kWh", (row) => row.panel],
    ]),
  ];
}

/** What heated a house until the cut. */
const heating = (heated: boolean): string => heated ? "heater until the cut" : "no heater";

/** How long the house lasts when the power fails, and the hours after each start. */
export function powerCutTables(cut: PowerCut): ResultTable[] {
  const { courses, outdoors, hours } = cut;
  const after = Array.from({ length: hours + 1 }, (_, hour) => hour);
  return [
    resultTable("store-power-cut", courses, [
      ["cut at", "", (row) => row.start],
      ["hour of the year from 0", "", (row) => row.hour],
      ["heating", "", (row) => heating(row.heated)],
      ["after the cut", "", (row) => row.way],
      ["house at the cut", "degC", (row) => row.air[0]!],
      ["until 0 degC", "h", (row) => row.toFreezing],
      ["until the crop's killing limit", "h", (row) => row.toCropLimit],
      ["lowest in four days", "degC", (row) => row.lowest],
    ]),
    ...outdoors.map(({ start, air }) => {
      const own = courses.filter((row) => row.start === start);
      return resultTable(`store-power-cut-${start.replaceAll(" ", "-")}`, after, [
        ["after the cut", "h", (hour) => hour],
        ["outdoors", "degC", (hour) => air[hour]!],
        ...seriesColumns<number>(
          own.map(({ heated, way }) => `${way}, ${heating(heated)}`),
          "degC",
          (hour, column) => own[column]!.air[hour]!,
        ),
      ]);
    }),
  ];
}

/** One tube in the hour that brings most; no rows where no hour charges. */
export function tubeAlongTables(found: StrongestHour | null): ResultTable[] {
  const rows = found?.rows ?? [];
  return [
    resultTable("tubes-along", rows, [
      ["from the inlet", "m", (row) => row.along],
      ["air", "degC", (row) => row.temperature],
      ["relative humidity", "1", (row) => row.relativeHumidity],
      ["sensible heat", "W/m", (row) => row.sensible],
      ["latent heat", "W/m", (row) => row.latent],
      ["air without vapour", "degC", (row) => row.dryTemperature],
      ["heat without vapour", "W/m", (row) => row.dry],
    ]),
  ];
}

/** Number of tubes by rules of thumb. */
export function tubeCountTables({ rows }: TubeCounts): ResultTable[] {
  return [
    resultTable("tubes-count", rows, [
      ["sized by", "", (row) => row.way],
      ["number of tubes", "", (row) => row.count],
      ["total length", "m", (row) => row.totalLength],
    ]),
  ];
}

/** Fields that no other one beats, and those worth a look. */
export function fieldSearchTables({ front, picks }: FieldSearch): ResultTable[] {
  type Row = FieldCandidate & { readonly why: string };
  const rows: Row[] = [
    ...picks.map(({ why, field }) => ({ why, ...field })),
    ...front.map((field) => ({ why: "unbeaten", ...field })),
  ];
  return [
    resultTable<Row>("tubes-field-search", rows, [
      ["why", "", (row) => row.why],
      ["tube", "", (row) => row.tube],
      ["number of tubes", "", (row) => row.count],
      ["length", "m", (row) => row.length],
      ["spacing", "m", (row) => row.spacing],
      ["layers", "", (row) => row.layers],
      ["depth", "m", (row) => row.depth],
      ["heat", "kWh/d", (row) => row.heat],
      ["fan", "kWh/d", (row) => row.fanEnergy],
      ["cost", "money", (row) => row.cost],
    ]),
  ];
}
