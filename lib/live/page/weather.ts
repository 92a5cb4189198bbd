/** The weather of a page, unpacked. @module */
import type { ClimateYear } from "../../climate/types.ts";
import { unpackSeries } from "../packed.ts";
import type { LivePage, SeriesName } from "../types.ts";

/**
 * Puts head and series together again.
 *
 * @param page what the page carries
 * @param text its packed series
 */
export async function pageWeather(
  { weather, series }: Pick<LivePage, "weather" | "series">,
  text: string,
): Promise<ClimateYear> {
  const unpacked = await unpackSeries(text, series.length);
  const named: { [Name in SeriesName]?: Float64Array } = {};
  series.forEach((name, k) => named[name] = unpacked[k]!);
  return { skyLongwave: null, notices: [], ...weather, ...named } as ClimateYear;
}
