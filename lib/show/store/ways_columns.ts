/** Columns of the tables that compare houses and stores. @module */
import type { HouseWay, VariantRow } from "../../store/mod.ts";
import { shown } from "../kit/reader.ts";
import { hourName } from "../kit/calendar.ts";
import type { Column } from "../kit/data_table.ts";

/** degC whose hours are shown. */
export const LIMITS = [-10, -5, 0, 5];

/** Day on which a house first freezes, or never. */
export function freezeText(way: HouseWay): string {
  return way.firstFreeze === null ? "never" : hourName(way.firstFreeze).slice(0, -6);
}

/** Hours of the year that a house is below one of the {@link LIMITS}. */
export function hoursBelow(way: HouseWay, limit: number): number {
  return way.hoursBelow.find((row) => row.limit === limit)!.hours;
}

/** Columns of the table of the four houses, in the reader's units. */
export const wayColumns = (): readonly Column<HouseWay>[] => [
  { head: "house", value: (way) => way.name },
  { head: "coldest hour", value: (way) => way.coldestHour, kind: "temperature" },
  { head: "first freeze after midsummer", value: freezeText },
  ...LIMITS.map((limit): Column<HouseWay> => ({
    head: `hours below ${shown(limit, "temperature", 0)}`,
    value: (way) => hoursBelow(way, limit),
    digits: 0,
  })),
  { head: "back-up heat", value: (way) => way.backupHeat, kind: "energy" },
];

/** Columns of the table of other stores. */
export const VARIANT_COLUMNS: readonly Column<VariantRow>[] = [
  { head: "store", value: (row) => row.name },
  { head: "charged", value: (row) => row.heatIn, kind: "energy", us: false },
  { head: "discharged", value: (row) => row.heatOut, kind: "energy", us: false },
  { head: "fan", value: (row) => row.fanEnergy, kind: "electricity" },
  { head: "recovery", value: (row) => row.recovery, kind: "share" },
  { head: "discharged per kWh of fan", value: (row) => row.cop, kind: "ratio", digits: 1 },
  { head: "coldest hour", value: (row) => row.coldestHour, kind: "temperature" },
  { head: "below freezing", value: (row) => row.hoursBelowFreezing, kind: "hours" },
  { head: "back-up heat", value: (row) => row.backupHeat, kind: "energy", us: false },
];
