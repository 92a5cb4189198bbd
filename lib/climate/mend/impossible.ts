/** Weather that cannot be, all year: refused unless the columns file says in a word that it is meant. @module */
import { HOURS_PER_YEAR } from "../../basics/mod.ts";
import { showFigures, showSi } from "../../units/mod.ts";
import type { AcceptedWord } from "../read/accepted.ts";
import { type ClimateQuantity, QUANTITY_RULES } from "../read/quantities.ts";
import { type Completion, tell } from "./fill_gaps.ts";

/** A rounded dew point may stand this far above the dry bulb, K. */
const ROUNDING = 1;
/** Share of the hours from which on a dew point above the dry bulb is no fault of single rows. */
const MOST_ABOVE = 0.25;
/** Height of the sun at mid-hour below which the whole hour is night, degrees. */
const DARK = -8;
/**
 * Median of the nights below which radiation is no offset of the sensor, W/m²: unventilated
 * thermopiles cool by up to 10 under a clear sky. From memory.
 */
const OFFSET = -10;
/** Sum of a year that no place on earth stays below, kWh/m²; the poles have about 800. From memory. */
const LEAST_SUN = 100;

/** Quantities that weather changes from hour to hour. */
const CHANGING: readonly ClimateQuantity[] = [
  "dryBulb",
  "dewPoint",
  "relativeHumidity",
  "windSpeed",
];

/** What cannot be, and the word that accepts it; none where no weather is like that. */
interface Impossible {
  readonly quantity: ClimateQuantity;
  readonly found: string;
  readonly remedy: string;
  readonly word: AcceptedWord | null;
}

/**
 * Notes weather that cannot be as faults, with the column and what to do; tells where the columns file
 * accepts it.
 *
 * @param context the year in work, as the file has it
 */
export function refuseImpossible(context: Completion): void {
  const { layout, faults } = context;
  const accepted = layout.accept ?? [];
  for (const { quantity, found, remedy, word } of impossibilities(context)) {
    const { words } = QUANTITY_RULES[quantity];
    if (word !== null && accepted.includes(word)) {
      tell(context, `${words} ${found}: accepted by "${word}" in the columns file`, "warning");
      continue;
    }
    const plan = layout.columns.find((column) => column.quantity === quantity);
    const way = word === null
      ? ""
      : `; where it is meant, write accept: [${word}] in a columns file`;
    faults.add(`Cannot use ${words}: it ${found}; ${remedy}${way}`, {
      file: layout.file,
      line: layout.firstLine,
      ...(plan === undefined ? {} : { column: plan.head }),
    });
  }
}

function impossibilities(context: Completion): Impossible[] {
  const { series } = context;
  const still = CHANGING.flatMap((quantity) => {
    const value = onlyValue(series[quantity]);
    return value === null ? [] : [standsStill(quantity, value)];
  });
  return [...dewPointAbove(context), ...still, ...negativeNights(context), ...noSun(context)];
}

/** The one value of a series without gaps; null where it has several. */
function onlyValue(series: Float64Array | undefined): number | null {
  const value = series?.find((one) => !Number.isNaN(one));
  if (value === undefined) return null;
  return series!.every((one) => Number.isNaN(one) || one === value) ? value : null;
}

function standsStill(quantity: ClimateQuantity, value: number): Impossible {
  const shown = `${showFigures(value, 4)} ${QUANTITY_RULES[quantity].unit}`.trim();
  const found = `is ${shown} in all ${HOURS_PER_YEAR} hours of the year`;
  return quantity === "windSpeed" && value === 0
    ? {
      quantity,
      found,
      remedy: "the anemometer was stuck or its column is empty; take another year, or leave the " +
        "column out, then a usual wind is taken",
      word: "no wind",
    }
    : {
      quantity,
      found,
      remedy: "the sensor was stuck or the column is filled; take the measured column, or leave " +
        "this one out where it is not needed",
      word: "one value",
    };
}

function dewPointAbove({ series: { dewPoint, dryBulb } }: Completion): Impossible[] {
  if (dewPoint === undefined || dryBulb === undefined) return [];
  let [above, both] = [0, 0];
  dewPoint.forEach((dew, hour) => {
    const dry = dryBulb[hour]!;
    if (Number.isNaN(dew) || Number.isNaN(dry)) return;
    both++;
    if (dew > dry + ROUNDING) above++;
  });
  if (above <= MOST_ABOVE * both) return [];
  return [{
    quantity: "dewPoint",
    found: `is above the dry bulb in ${above} of ${both} hours`,
    remedy:
      "the columns may be swapped, or their units differ; name the right ones, or leave the dew " +
      "point out where there is a relative humidity",
    word: null,
  }];
}

function negativeNights({ series, sun }: Completion): Impossible[] {
  return (["globalHorizontal", "diffuseHorizontal", "directNormal"] as const).flatMap(
    (quantity) => {
      const nights = Array.from(series[quantity] ?? [])
        .filter((value, hour) => !Number.isNaN(value) && sun.elevation[hour]! < DARK)
        .sort((a, b) => a - b);
      const median = nights[nights.length >> 1];
      if (median === undefined || median >= OFFSET) return [];
      return [{
        quantity,
        found: `is ${showFigures(median, 3)} W/m² at night (median of ${nights.length} hours)`,
        remedy:
          "it may be net radiation, or the sensor's zero is off; take the global radiation, or " +
          "correct the zero",
        word: "negative nights" as const,
      }];
    },
  );
}

function noSun({ series: { globalHorizontal } }: Completion): Impossible[] {
  if (globalHorizontal === undefined) return [];
  const known = globalHorizontal.filter((value) => !Number.isNaN(value));
  if (known.length < HOURS_PER_YEAR / 2) return [];
  const total = known.reduce((sum, value) => sum + Math.max(0, value), 0) / 1000;
  if (total >= LEAST_SUN) return [];
  return [{
    quantity: "globalHorizontal",
    found: `totals ${showSi(total, "radiation")} in the year, less than at the poles`,
    remedy: "the sensor was dead, or its unit is another; take another year or correct the unit",
    word: "no sun",
  }];
}
