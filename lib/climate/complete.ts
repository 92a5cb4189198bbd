/** A placed table made into a whole year: gaps filled, the rest derived or set by default. @module */
import { relativeHumidityFromDewPoint, standardPressure } from "../air/mod.ts";
import { HOURS_PER_YEAR, type Notice, notice } from "../basics/mod.ts";
import { type HourlySun, hourlySun, splitGlobal } from "../sun/mod.ts";
import { describeHour, findGaps, type HourRows, LONGEST_GAP } from "./calendar.ts";
import { type Quantity, QUANTITY_RULES } from "./quantities.ts";
import { shiftRadiation } from "./shift_radiation.ts";
import { FaultList, type TableLayout, type TableValues } from "./table.ts";
import type { ClimateYear } from "./types.ts";

/** Wind speed taken where a file has none, m/s. Common practice, no source. */
export const DEFAULT_WIND_SPEED = 3;

type HourSeries = Partial<Record<Quantity, Float64Array>>;

/**
 * Makes a whole climate year of a placed table.
 *
 * Missing hours in runs of at most {@link LONGEST_GAP} are filled (radiation in proportion to the sun,
 * the rest straight between its neighbours) and listed; longer runs are refused, but wind, pressure,
 * long-wave radiation and albedo, which have defaults. Humidity comes from the dew point, direct and
 * diffuse radiation from the global (Erbs, Klein & Duffie 1982) where the file has none.
 *
 * @param layout the table
 * @param rows row of each hour
 * @param values SI values by row
 * @returns the year
 * @throws {InputErrors} for missing quantities and long gaps
 */
export function completeYear(
  layout: TableLayout,
  rows: HourRows,
  values: TableValues,
): ClimateYear {
  const notices: Notice[] = [...layout.notices];
  const sun = hourlySun(layout.place);
  const series: HourSeries = {};
  for (const [quantity, column] of Object.entries(values) as [Quantity, Float64Array][]) {
    series[quantity] = Float64Array.from(rows, (row) => row === -1 ? NaN : column[row]!);
  }
  const context: Context = { layout, rows, sun, series, notices, faults: new FaultList() };
  refuseMissingQuantities(context);
  const dryBulb = fillStraight(context, "dryBulb")!;
  const relativeHumidity = humidity(context, dryBulb);
  const radiation = completeRadiation(context);
  const windSpeed = optional(context, "windSpeed", DEFAULT_WIND_SPEED);
  const pressure = optional(context, "pressure", standardPressure(layout.place.elevation));
  const longwave = series.skyLongwave === undefined
    ? undefined
    : fillStraight(context, "skyLongwave");
  context.faults.throwIfAny();
  return {
    place: layout.place,
    source: layout.file,
    layout: layout.layout,
    dryBulb,
    relativeHumidity,
    ...radiation,
    windSpeed,
    pressure,
    skyLongwave: longwave ?? null,
    albedo: albedo(context),
    notices,
  };
}

interface Context {
  readonly layout: TableLayout;
  readonly rows: HourRows;
  readonly sun: HourlySun;
  readonly series: HourSeries;
  readonly notices: Notice[];
  readonly faults: FaultList;
}

function tell(context: Context, text: string, level: "info" | "warning" = "info"): void {
  context.notices.push(notice(level, "climate", text));
}

function refuseMissingQuantities({ series, layout }: Context): void {
  const faults = new FaultList();
  const location = { file: layout.file, line: Math.max(1, layout.firstLine - 1) };
  const need = (words: string) =>
    faults.add(`Cannot read the climate: expected a column of ${words}, found none`, location);
  if (!hasValues(series.dryBulb)) need("dry-bulb temperature");
  if (!hasValues(series.relativeHumidity) && !hasValues(series.dewPoint)) {
    need("relative humidity or dew point");
  }
  const parts = hasValues(series.directNormal) && hasValues(series.diffuseHorizontal);
  if (!hasValues(series.globalHorizontal) && !parts) {
    need("global radiation (or both direct and diffuse)");
  }
  faults.throwIfAny();
}

function hasValues(series: Float64Array | undefined): boolean {
  return series?.some((value) => !Number.isNaN(value)) ?? false;
}

/** Fills short gaps straight between the neighbours; notes long ones as faults. */
function fillStraight(context: Context, quantity: Quantity): Float64Array | undefined {
  const values = context.series[quantity];
  if (values === undefined) return undefined;
  const runs = findGaps((hour) => Number.isNaN(values[hour]!));
  const filled = values.slice();
  for (const run of runs) {
    if (run.length > LONGEST_GAP) {
      longGap(context, quantity, run);
      continue;
    }
    const before = values[(run.start + HOURS_PER_YEAR - 1) % HOURS_PER_YEAR]!;
    const after = values[(run.start + run.length) % HOURS_PER_YEAR]!;
    const from = Number.isNaN(before) ? after : before;
    const to = Number.isNaN(after) ? before : after;
    for (let step = 0; step < run.length; step++) {
      filled[run.start + step] = from + (to - from) * (step + 1) / (run.length + 1);
    }
  }
  listFilled(context, quantity, runs.filter((run) => run.length <= LONGEST_GAP));
  return filled;
}

function longGap(
  context: Context,
  quantity: Quantity,
  run: { start: number; length: number },
): void {
  const row = context.rows[run.start]!;
  const plan = context.layout.columns.find((column) => column.quantity === quantity);
  context.faults.add(
    `Cannot fill the gap: ${
      QUANTITY_RULES[quantity].words
    } is missing for ${run.length} hours from ` +
      `${
        describeHour(run.start)
      }, at most ${LONGEST_GAP} are filled in; complete the file from a ` +
      "neighbouring station or another year",
    {
      file: context.layout.file,
      line: context.layout.firstLine + Math.max(0, row),
      ...(plan === undefined ? {} : { column: plan.head }),
    },
  );
}

function listFilled(
  context: Context,
  quantity: Quantity,
  runs: readonly { start: number; length: number }[],
): void {
  if (runs.length === 0) return;
  const hours = runs.reduce((sum, run) => sum + run.length, 0);
  const shown = runs.slice(0, 8).map((run) =>
    run.length === 1 ? describeHour(run.start) : `${describeHour(run.start)} (${run.length} h)`
  );
  const more = runs.length > shown.length ? ` and ${runs.length - shown.length} more` : "";
  tell(
    context,
    `${QUANTITY_RULES[quantity].words}: ${hours} missing ${
      hours === 1 ? "hour" : "hours"
    } filled in: ` +
      `${shown.join(", ")}${more}`,
    "warning",
  );
}

function humidity(context: Context, dryBulb: Float64Array): Float64Array {
  const { series } = context;
  if (!hasValues(series.relativeHumidity)) {
    const dew = fillStraight(context, "dewPoint")!;
    let above = 0;
    const result = dryBulb.map((temperature, hour) => {
      if (dew[hour]! > temperature + 0.5) above++;
      return relativeHumidityFromDewPoint(temperature, dew[hour]!);
    });
    if (above > 0) {
      tell(
        context,
        `Dew point above the dry bulb in ${above} hours: taken as saturated`,
        "warning",
      );
    }
    return result;
  }
  const relative = fillStraight(context, "relativeHumidity")!;
  let over = 0;
  const result = relative.map((value) => {
    if (value > 1.005) over++;
    return Math.min(1, value);
  });
  if (over > 0) {
    tell(context, `Relative humidity above 100 % in ${over} hours: taken as 100 %`, "warning");
  }
  return result;
}

/** Wind or pressure: filled, or the default where the file has none or too little. */
function optional(
  context: Context,
  quantity: "windSpeed" | "pressure",
  value: number,
): Float64Array {
  const { words, unit } = QUANTITY_RULES[quantity];
  const given = context.series[quantity];
  const shown = `${Number(value.toPrecision(5))} ${unit}`;
  if (!hasValues(given)) {
    tell(context, `No ${words} in the file: ${shown} taken for every hour`);
    return new Float64Array(HOURS_PER_YEAR).fill(value);
  }
  const long = findGaps((hour) => Number.isNaN(given![hour]!)).filter((run) =>
    run.length > LONGEST_GAP
  );
  for (const run of long) given!.fill(value, run.start, run.start + run.length);
  if (long.length > 0) {
    const hours = long.reduce((sum, run) => sum + run.length, 0);
    tell(
      context,
      `${words} missing for ${hours} hours in long runs: ${shown} taken there`,
      "warning",
    );
  }
  return fillStraight(context, quantity)!;
}

function albedo(context: Context): Float64Array | null {
  const given = context.series.albedo;
  if (!hasValues(given)) return null;
  if (given!.every((value) => Number.isNaN(value) || value === 0)) {
    tell(context, "Albedo is 0 in every hour of the file: taken as missing");
    return null;
  }
  const mean = given!.reduce((sum, value) => sum + (Number.isNaN(value) ? 0 : value), 0) /
    given!.reduce((count, value) => count + (Number.isNaN(value) ? 0 : 1), 0);
  return given!.map((value) => Number.isNaN(value) ? mean : value);
}

interface Radiation {
  readonly globalHorizontal: Float64Array;
  readonly directNormal: Float64Array;
  readonly diffuseHorizontal: Float64Array;
}

function completeRadiation(context: Context): Radiation {
  const { series, sun, layout } = context;
  const missing = () => new Float64Array(HOURS_PER_YEAR).fill(NaN);
  const given = {
    globalHorizontal: series.globalHorizontal?.slice() ?? missing(),
    directNormal: series.directNormal?.slice() ?? missing(),
    diffuseHorizontal: series.diffuseHorizontal?.slice() ?? missing(),
  };
  for (const values of Object.values(given)) cleanNight(values, sun);
  joinParts(given, sun);
  series.globalHorizontal = given.globalHorizontal;
  fillBySun(context, given.globalHorizontal);
  splitWhereMissing(context, given);
  if (layout.radiationMoment === 0.5) return given;
  return shiftRadiation({ ...given, moment: layout.radiationMoment, place: layout.place, sun });
}

/** Missing and slightly negative values become 0 at night; negatives by day too. */
function cleanNight(values: Float64Array, sun: HourlySun): void {
  for (let hour = 0; hour < values.length; hour++) {
    if (Number.isNaN(values[hour]!) && sun.upShare[hour] === 0) values[hour] = 0;
    else if (values[hour]! < 0) values[hour] = 0;
  }
}

/** Global from its parts where only the parts are given. */
function joinParts(given: Radiation, sun: HourlySun): void {
  for (let hour = 0; hour < given.globalHorizontal.length; hour++) {
    if (!Number.isNaN(given.globalHorizontal[hour]!)) continue;
    const share = sun.upShare[hour]!;
    const cosine = share > 0 ? sun.cosZenith[hour]! / share : 0;
    given.globalHorizontal[hour] = given.diffuseHorizontal[hour]! +
      given.directNormal[hour]! * cosine;
  }
}

/** Fills short gaps of the global radiation in proportion to the sun's height. */
function fillBySun(context: Context, global: Float64Array): void {
  const { sun } = context;
  const runs = findGaps((hour) => Number.isNaN(global[hour]!));
  for (const run of runs) {
    if (run.length > LONGEST_GAP) {
      longGap(context, "globalHorizontal", run);
      continue;
    }
    const around = [
      run.start - 2,
      run.start - 1,
      run.start + run.length,
      run.start + run.length + 1,
    ]
      .map((hour) => (hour + HOURS_PER_YEAR) % HOURS_PER_YEAR)
      .filter((hour) => sun.cosZenith[hour]! > 0.02 && !Number.isNaN(global[hour]!));
    const seen = around.reduce((sum, hour) => sum + global[hour]!, 0);
    const height = around.reduce((sum, hour) => sum + sun.cosZenith[hour]!, 0);
    for (let hour = run.start; hour < run.start + run.length; hour++) {
      global[hour] = height > 0 ? seen / height * sun.cosZenith[hour]! : 0;
    }
  }
  listFilled(context, "globalHorizontal", runs.filter((run) => run.length <= LONGEST_GAP));
}

/** Direct and diffuse from the global, or one of them from the two others. */
function splitWhereMissing(context: Context, given: Radiation): void {
  const { sun } = context;
  let modelled = 0;
  for (let hour = 0; hour < given.globalHorizontal.length; hour++) {
    const global = given.globalHorizontal[hour]!;
    const noDirect = Number.isNaN(given.directNormal[hour]!);
    const noDiffuse = Number.isNaN(given.diffuseHorizontal[hour]!);
    if (!noDirect && !noDiffuse) continue;
    const share = sun.upShare[hour]!;
    const cosZenith = share > 0 ? sun.cosZenith[hour]! / share : 0;
    if (noDirect && !noDiffuse) {
      const beam = Math.max(0, global - given.diffuseHorizontal[hour]!);
      const most = sun.extraterrestrialNormal[hour]! * share;
      given.directNormal[hour] = cosZenith > 0.02 ? Math.min(most, beam / cosZenith) : 0;
    } else if (!noDirect) {
      given.diffuseHorizontal[hour] = Math.max(0, global - given.directNormal[hour]! * cosZenith);
    } else {
      const split = splitGlobal({
        globalHorizontal: global,
        cosZenith,
        upShare: share,
        extraterrestrialNormal: sun.extraterrestrialNormal[hour]!,
      });
      given.directNormal[hour] = split.directNormal;
      given.diffuseHorizontal[hour] = split.diffuseHorizontal;
      modelled++;
    }
  }
  if (modelled === 0) return;
  tell(
    context,
    `Direct and diffuse radiation of ${modelled} hours worked out from the global radiation ` +
      "(Erbs, Klein & Duffie 1982)",
  );
}
