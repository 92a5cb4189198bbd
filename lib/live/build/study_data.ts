/** A study as a live page carries it. @module */
import { fileName } from "../../basics/mod.ts";
import { HOURLY_SERIES } from "../../climate/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import { applySchema } from "../../study/file/check_study.ts";
import type { StudyGiven } from "../../study/file/schema.ts";
import { parseYaml } from "../../study/file/yaml_source.ts";
import type { Study } from "../../study/types.ts";
import { packSeries } from "../packed.ts";
import { type LiveStudy, type SeriesName, type WeatherHead, type WeatherTerms } from "../types.ts";

/**
 * The sections of the study's own file, before anything that it leaves open is filled: so that a moved
 * value moves what follows from it.
 *
 * @throws {Error} where the text of the study does not fit the schema, which opening it has checked
 */
export function liveStudy(study: Study): LiveStudy {
  const { soil, house, tubes, headers, fan, store } = givenOf(study);
  return {
    given: { soil, house, tubes, headers, fan, store },
    ownFans: study.fan.ownFans ?? null,
  };
}

function givenOf({ text, path }: Study): StudyGiven {
  const { given } = applySchema(parseYaml(text, path));
  if (given === undefined) throw new Error(`Cannot read ${path} once more`);
  return given;
}

/**
 * What the study's own file says of any weather that it is run on. Throws as {@link liveStudy} does.
 */
export function weatherTerms(study: Study): WeatherTerms {
  const { place: { horizon, ...place }, climate: { mendShift, seed } } = givenOf(study);
  return { place, horizon, mendShift, seed };
}

/** A year of weather in a page. */
export interface PackedWeather {
  readonly head: WeatherHead;
  readonly series: readonly SeriesName[];
  /** the series, packed */
  readonly text: string;
}

/** The weather of a study: to the last bit, so that the page computes with what the study did. */
export async function packedWeather(climate: ClimateYear): Promise<PackedWeather> {
  const series = HOURLY_SERIES.filter((name) => climate[name] instanceof Float64Array);
  const { place, source, layout, derivedMonths } = climate;
  return {
    head: {
      place,
      source: fileName(source), // without the folders of the machine that published it
      layout,
      ...(derivedMonths === undefined ? {} : { derivedMonths }),
    },
    series,
    text: await packSeries(series.map((name) => climate[name] as Float64Array)),
  };
}
