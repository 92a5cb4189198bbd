/** What `deno task sweep` does about doubt: writes the usual ranges, and says what samples tell. @module */
import { dirname, join } from "node:path";
import { InputError } from "../basics/mod.ts";
import { startRun, type Study, type WorkPool } from "../study/mod.ts";
import { readTextIfThere } from "../study/file/read_text.ts";
import { writeWhole } from "../study/results/write_whole.ts";
import {
  doubtText,
  type FigureDoubt,
  halfBand,
  type KnownRows,
  readWinterValues,
  sampledDoubt,
  strongestKeys,
  type SweepManifest,
  type SweepPlan,
  winterValues,
  winterValuesText,
} from "../study/sweep/mod.ts";
import { showFigures, showSi } from "../units/mod.ts";
import { complain, say } from "./terminal.ts";

/** Figures whose doubt the console names. */
const NAMED = ["store.savedHeat", "store.backupHeat", "store.coldestHour"];

/** A sweep whose rows are all there. */
export interface SweptTable {
  /** checked sweep file */
  readonly plan: SweepPlan;
  /** its columns of figures */
  readonly manifest: SweepManifest;
  /** lines of the table by their number */
  readonly rows: KnownRows;
}

/** Count of samples from the command line. */
export function readRowCount(text: string): number {
  if (/^\d{1,6}$/.test(text) && Number(text) >= 8) return Number(text);
  throw new InputError(`Cannot use --doubt "${text}": expected how many samples, 8 or more`);
}

/** Writes a sweep file made from a study; one that is there, changed or not, stays. */
export async function keepSweepFile(
  path: string,
  text: () => string | Promise<string>,
): Promise<void> {
  const there = await Deno.stat(path).then(() => true, () => false);
  if (there) return complain(`${path} is there already, and is used`);
  await Deno.mkdir(dirname(path), { recursive: true });
  await writeWhole(path, await text());
  say(`wrote ${path}: to change to what is known of the site`);
}

/** Values of single winters beside the rows of a doubt. */
const WEATHER = "weather.csv";

/**
 * Counts the odds of the study as it is, whose winters the samples of its doubt draw, and writes what
 * they say beside the rows; once a folder, and only where the sweep asks for the store.
 *
 * @param folder of the rows
 * @param asked the study, the sweep, and workers to share the winters
 */
export async function keepWeather(
  folder: string,
  { study, plan, pool }: {
    readonly study: Study;
    readonly plan: SweepPlan;
    readonly pool: WorkPool | undefined;
  },
): Promise<void> {
  const file = join(folder, WEATHER);
  if (!plan.chapters.includes("store") || await readTextIfThere(file, "winters") !== null) return;
  const { winters } = study.worth;
  if (winters === 0) {
    return complain("the weather is not among the doubts: worth.winters is 0");
  }
  complain(`the weather: ${winters} winters of the study as it is`);
  const odds = await startRun(study, { pool }).odds();
  await writeWhole(file, winterValuesText(winterValues(odds!.list)));
}

/** Of samples: bands, and what moves each figure most. */
export async function tellDoubt(
  folder: string,
  { plan, manifest, rows }: SweptTable,
): Promise<void> {
  if (plan.form !== "sample") return;
  const file = join(folder, WEATHER);
  const weather = await readTextIfThere(file, "winters");
  const winters = weather === null ? undefined : readWinterValues(weather, file);
  const doubts = sampledDoubt(plan, manifest.figures, rows, winters);
  if (doubts.length === 0) return;
  await writeWhole(join(folder, "doubt.csv"), doubtText(plan, doubts));
  for (const key of NAMED) {
    const doubt = doubts.find(({ figure }) => figure.key === key);
    if (doubt !== undefined) say(doubtLine(plan, doubt));
  }
  say(`bands and shares of all figures: ${join(folder, "doubt.csv")}`);
  const saved = doubts.find(({ figure }) => figure.key === "store.savedHeat");
  const half = saved === undefined ? null : halfBand(saved);
  if (half !== null) {
    say(`for the study file, of a single year: doubtHeatSaved: ${showSi(half, "share")} in worth`);
  }
}

/** "heat saved: 3856 kWh as it is, 2900 to 4800 in 95 of 100 samples; moved most by soil.moisture (52 %)". */
function doubtLine(plan: SweepPlan, doubt: FigureDoubt): string {
  const { figure: { label, unit, unchanged }, band } = doubt;
  const shown = (value: number) => showFigures(value, 3);
  const known = typeof unchanged === "number" ? `${shown(unchanged)} ${unit} as it is, ` : "";
  const strongest = strongestKeys(plan, doubt).slice(0, 3)
    .map(({ key, total }) => `${key} (${showSi(total, "share")})`).join(", ");
  const moved = strongest === ""
    ? "these samples do not tell what moves it"
    : `moved most by ${strongest}`;
  return `${label}: ${known}${shown(band[0])} to ${shown(band[1])} in 95 of 100 samples; ${moved}`;
}
