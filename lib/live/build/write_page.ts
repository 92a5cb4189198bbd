/** Writes the live page of a study that was run. @module */
import { join } from "node:path";
import type { ChapterResults } from "../../study/chapters.ts";
import { libraryVersion } from "../../study/run/library_version.ts";
import type { Study } from "../../study/types.ts";
import type { UnitSystem } from "../../units/quantity.ts";
import { liveYear } from "../sum/year.ts";
import type { LivePage, LiveYear } from "../types.ts";
import { liveScript } from "./live_script.ts";
import { pageHtml } from "./page_html.ts";
import { publishedYear } from "./published.ts";
import { slidersOf } from "./sliders.ts";
import { liveStudy, packedWeather, weatherTerms } from "./study_data.ts";

/** Results of a run that its live page prints. */
export type LiveResults = Pick<ChapterResults, "soil" | "fan" | "store">;

/** How a page is written. */
export interface LivePageOptions {
  /** units that are shown first; those of the study unless given */
  readonly units?: UnitSystem;
}

/** Name of the page in its folder. */
export const LIVE_PAGE = "index.html";

async function markOf(study: Study): Promise<string> {
  const { hash } = await libraryVersion();
  return `${study.inputHash.slice(0, 8)}-${hash.slice(0, 8)}`;
}

/**
 * Writes `index.html`, one file that needs no other and no network.
 *
 * @param results of the run
 * @param study that was run
 * @param folder to write into; made where it is missing
 * @param options units shown first
 * @returns path of the page
 * @throws {Error} where the scripts cannot be bundled
 */
export function writeLivePage(
  results: LiveResults,
  study: Study,
  folder: string,
  options: LivePageOptions = {},
): Promise<string> {
  const known = {
    full: publishedYear(study, results),
    porosity: results.soil.properties.porosity,
  };
  return writePageOf(study, known, folder, options);
}

/** What of a run goes into its page. */
export interface KnownOfRun {
  /** the study's own year */
  readonly full: LiveYear;
  /** pores of its soil, 0 to 1 */
  readonly porosity: number;
}

/** Writes a page from a year that is known. Parameters otherwise are those of {@link writeLivePage}. */
export async function writePageOf(
  study: Study,
  { full, porosity }: KnownOfRun,
  folder: string,
  options: LivePageOptions = {},
): Promise<string> {
  const { page: script } = await liveScript();
  const own = liveStudy(study);
  const { climate } = study;
  const weather = await packedWeather(climate);
  const page: LivePage = {
    title: study.heading.title,
    mark: await markOf(study),
    units: options.units ?? study.heading.units,
    study: own,
    weather: weather.head,
    series: weather.series,
    terms: weatherTerms(study),
    sliders: slidersOf(study, porosity),
    published: {
      full,
      screening: liveYear({ study: own, climate, changes: {}, resolution: "screening" }),
    },
  };
  await Deno.mkdir(folder, { recursive: true });
  const path = join(folder, LIVE_PAGE);
  await Deno.writeTextFile(path, pageHtml({ page, weather: weather.text, script: script.text }));
  return path;
}
