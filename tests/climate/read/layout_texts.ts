/** Years laid out as the public layouts. @module */
import type { ClimateYear } from "winterground/climate/mod.ts";

const MONTH_YEARS = [1985, 1990, 1978, 2001, 1999, 1983, 1987, 1992, 1980, 1995, 2003, 1981];

/** Month, day and hour of the 365-day year. */
export function moment(hour: number): [month: number, day: number, hour: number] {
  const date = new Date(Date.UTC(2001, 0, 1, hour));
  return [date.getUTCMonth() + 1, date.getUTCDate(), date.getUTCHours()];
}

/** Two digits. */
export const two = (value: number): string => String(value).padStart(2, "0");

/** A year as a TMY3 file. */
export function tmy3Text(year: ClimateYear): string {
  const heads = "Date (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),DNI (W/m^2),DHI (W/m^2),Dry-bulb (C)," +
    "RHum (%),Pressure (mbar),Wspd (m/s),Alb (unitless)";
  const lines = ['700001,"ALDERSETT, OLD FIELD",NM,-6.0,49.600,-101.300,560', heads];
  for (let hour = 0; hour < 8760; hour++) {
    const [month, day, start] = moment(hour);
    const values = [
      year.globalHorizontal[hour]!.toFixed(0),
      year.directNormal[hour]!.toFixed(0),
      year.diffuseHorizontal[hour]!.toFixed(0),
      year.dryBulb[hour]!.toFixed(1),
      (year.relativeHumidity[hour]! * 100).toFixed(0),
      "947",
      year.windSpeed[hour]!.toFixed(1),
      "0",
    ];
    const date = `${two(month)}/${two(day)}/${MONTH_YEARS[month - 1]}`;
    lines.push([date, `${two(start + 1)}:00`, ...values].join(","));
  }
  return lines.join("\r\n") + "\r\n";
}
