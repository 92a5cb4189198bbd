/** Operation and maintenance month by month, from the study's own year. @module */
import { hoursOfMonth, MONTH_NAMES } from "../../basics/mod.ts";
import type { StoreYear } from "../../store/types.ts";
import { showBoth } from "../../units/mod.ts";

/** What the calendar follows from, hour by hour of the study's year. */
export interface CalendarRequest {
  /** year of the store */
  readonly year:
    & Pick<StoreYear, "fanShare" | "condensate" | "outletTemperature">
    & { readonly house: Pick<StoreYear["house"], "relativeHumidity"> };
  /** degC outdoors by hour */
  readonly outside: Float64Array;
  /** true for tubes with holes, which draw soil gas */
  readonly perforated: boolean;
}

/** One task. */
export interface CalendarTask {
  /** what is done */
  readonly task: string;
  /** why in this month, with what the study's year says */
  readonly why: string;
  /** whom or what to defer to; "" where it is plain work */
  readonly deferTo: string;
}

/** One month. */
export interface CalendarMonth {
  /** 0 to 11 */
  readonly month: number;
  /** its name */
  readonly name: string;
  /** h the fan charges */
  readonly chargeHours: number;
  /** h the fan discharges */
  readonly dischargeHours: number;
  /** kg of water left in the tubes */
  readonly condensate: number;
  /** degC, coldest hour outdoors */
  readonly coldest: number;
  /** h in which the house's air is at 95 % or more */
  readonly dampHours: number;
  /** h in which the fan blows air of 20 degC or more out of tubes that have been wet */
  readonly warmWetHours: number;
  /** what is done */
  readonly tasks: readonly CalendarTask[];
}

/** degC outdoors below which a frost is hard; common practice, no source. */
const HARD_FROST = -2;
/** h of running after which a filter is looked at; common practice, no source. */
const FILTER_HOURS = 300;
/** Share of humidity that counts as damp; degC from which standing water is a hazard. */
const DAMP = 0.95;
const WARM = 20;
/** kg a month from which on drains are looked at. */
const WET = 20;
/** h of damp air a month from which on mould is looked for. */
const MOULD = 100;

/**
 * The calendar: what the fan, the frost and the water do in each month of the study's year, and the
 * tasks that follow.
 *
 * @param request the study's year
 */
export function maintenanceCalendar(request: CalendarRequest): CalendarMonth[] {
  const months = MONTH_NAMES.map((name, month) => monthOf(request, month, name));
  const frosty = months.map(({ coldest }) => coldest < HARD_FROST);
  const running = months.map(({ chargeHours, dischargeHours }) => chargeHours + dischargeHours);
  const before = (month: number) => (month + 11) % 12;
  const next = (month: number) => (month + 1) % 12;
  let since = 0;
  return months.map((one, month): CalendarMonth => {
    const tasks: CalendarTask[] = [];
    const add = (task: string, why: string, deferTo = "") =>
      void tasks.push({ task, why, deferTo });
    const hours = Math.round(running[month]!);
    if (frosty[next(month)] && !frosty[month]) {
      add(
        "Test the frost alarm and the back-up heat; close gaps in the cover",
        `the first hard frost, below ${showBoth(-2, "temperature")}, comes next month`,
        "licensed heating installer for any burner",
      );
    }
    if (frosty[before(month)] && !frosty[month]) {
      add("Put the winter's settings away; read the meters", "the last hard frost was last month");
    }
    if (running[month]! > 0 && running[before(month)]! < 1) {
      add(
        "Isolate and lock off the fan, clean wheel and guards, test the residual-current device",
        "the fan's season begins",
        "licensed electrician",
      );
    }
    since += running[month]!;
    if (since >= FILTER_HOURS || (hours > 0 && running[next(month)]! < 1)) {
      add(
        "Clean or change the filter; note header pressure and air flow",
        `${Math.round(since)} h of running since the last time`,
      );
      since = 0;
    }
    if (one.condensate > WET) {
      add(
        "Look into sump and drains every week, pump out, smell the outlet air",
        `${showBoth(one.condensate, "mass")} of water are left in the tubes`,
        "drainage contractor; nobody enters a sump without testing its air and a second person",
      );
    }
    if (one.warmWetHours > 24) {
      add(
        "No standing water, no spray from the store: drain what stands",
        `${Math.round(one.warmWetHours)} h of air of ${
          showBoth(20, "temperature")
        } or more through wet tubes: Legionella`,
        "public health authority; water-safety professional",
      );
    }
    if (one.dampHours > MOULD) {
      add(
        "Look for mould on crop, cover and tube ends; purge humidity, wear a respirator to clean",
        `${Math.round(one.dampHours)} h at 95 % or more`,
        "grower adviser; occupational hygienist",
      );
    }
    if (one.dischargeHours > 0 && (request.perforated || month === 0)) {
      add(
        "Leave the radon detectors in place, with and without the fan",
        request.perforated ? "tubes with holes draw soil gas" : "once in the heating season",
        "radon-measurement professional; local rules",
      );
    }
    if (hours > 0) {
      add(
        "Check humidity probes in salt air, wipe the pyranometer, zero the pressure, compare pairs",
        "drift shows by the month",
      );
    }
    if (month === coldestMonth(months)) {
      add(
        "Keep the fan off for a week of no hard frost, or note the control house",
        "the saving is judged against weeks without the fan",
        "crop at risk: only with back-up heat and an alarm",
      );
    }
    return { ...one, tasks };
  });
}

function monthOf(
  { year, outside }: CalendarRequest,
  month: number,
  name: string,
): Omit<CalendarMonth, "tasks"> {
  const share = hoursOfMonth(year.fanShare, month);
  const water = hoursOfMonth(year.condensate, month);
  const outlet = hoursOfMonth(year.outletTemperature, month);
  const humidity = hoursOfMonth(year.house.relativeHumidity, month);
  const kilograms = water.reduce((sum, one) => sum + one, 0);
  let [chargeHours, dischargeHours, dampHours, warmWetHours] = [0, 0, 0, 0];
  share.forEach((running, h) => {
    if (running > 0) chargeHours += running;
    else dischargeHours -= running;
    if (humidity[h]! >= DAMP) dampHours++;
    if (kilograms > WET && outlet[h]! >= WARM) warmWetHours += Math.abs(running);
  });
  return {
    month,
    name,
    chargeHours,
    dischargeHours,
    condensate: kilograms,
    coldest: hoursOfMonth(outside, month).reduce((low, one) => Math.min(low, one), Infinity),
    dampHours,
    warmWetHours,
  };
}

function coldestMonth(months: readonly { readonly coldest: number }[]): number {
  return months.reduce(
    (best, { coldest }, month) => coldest < months[best]!.coldest ? month : best,
    0,
  );
}
