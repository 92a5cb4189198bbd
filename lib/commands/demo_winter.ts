/**
 * Writes the made-up winter of the demo study: `deno run -A lib/commands/demo_winter.ts`. Some
 * minutes of work, wanted only where the model or the winter's truth has changed.
 *
 * @module
 */
import { dirname, join } from "node:path";
import Papa from "papaparse";
import type { ClimateYear } from "../climate/types.ts";
import { builtRequest, DEMO_TRUTH } from "../measured/demo/known_truth.ts";
import { DEMO_HOURS, DEMO_YEAR, demoSetting } from "../measured/demo/demo_season.ts";
import { forecastFile } from "../measured/demo/forecast_file.ts";
import { PLANTED } from "../measured/demo/planted.ts";
import { type TrueYear, trueYear } from "../measured/demo/true_year.ts";
import { winterFiles } from "../measured/demo/winter_files.ts";
import { winterTruth } from "../measured/demo/winter_truth.ts";
import { writeAtomically } from "../press/mod.ts";
import type { StoreRequest } from "../store/mod.ts";
import { storeRequest } from "../store/takes.ts";
import { defaultStudyPath, openStudy, startRun } from "../study/mod.ts";
import { say } from "./terminal.ts";

/** Whole number that every error hangs on. */
const SEED = 20251101;

async function writeWinter(): Promise<void> {
  const study = await openStudy(defaultStudyPath());
  const run = startRun(study);
  const [soil, tubes, headers, fan] = await Promise.all([
    run.soil(),
    run.tubes(),
    run.headers(),
    run.fan(),
  ]);
  const built = builtRequest(storeRequest(study, { soil, tubes, headers, fan }), DEMO_TRUTH);
  say("running the house as it was built …");
  const year = trueYear(built, DEMO_HOURS);
  await writeFiles(year, built, study.climate);
}

/** Days after 1 January at which the forecast begins: in the coldest weeks, with two months of log before. */
const FORECAST_DAY = 30;

/** Logs, log map, truth, planted faults and forecast, beside the other data. */
export async function writeFiles(
  year: TrueYear,
  built: StoreRequest,
  climate: ClimateYear,
): Promise<void> {
  const { timeZone } = climate.place;
  const setting = demoSetting(timeZone, SEED);
  const folder = join(dirname(defaultStudyPath()), "..", "..", "logs", "harrow-bend");
  await Deno.mkdir(folder, { recursive: true });
  const { map, logs } = winterFiles(year, climate, setting);
  const truth = Papa.unparse([...winterTruth(built, DEMO_TRUTH, year, setting)], { newline: "\n" });
  const faults = Papa.unparse(
    PLANTED.map(({ kind, channel, other, from, to, size }) => ({
      kind,
      channel,
      other: other ?? "",
      from: new Date(1000 * (setting.start + from)).toISOString(),
      to: new Date(1000 * (setting.start + to)).toISOString(),
      size,
    })),
    { newline: "\n" },
  );
  const files = [
    map,
    ...logs,
    { name: "truth.csv", text: `${truth}\n` },
    { name: "planted-faults.csv", text: `${faults}\n` },
    {
      name: "forecast.csv",
      text: forecastFile(
        climate,
        24 * FORECAST_DAY,
        new Date(Date.UTC(DEMO_YEAR + 1, 0, 1 + FORECAST_DAY)).toISOString().slice(0, 16),
        SEED,
      ),
    },
  ];
  for (const { name, text } of files) {
    await writeAtomically(join(folder, name), text);
    say(`${name}: ${Math.ceil(text.length / 1024)} kB`);
  }
}

if (import.meta.main) await writeWinter();
