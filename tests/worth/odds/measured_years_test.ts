// Source: open typical years of International Falls, Fargo and Wolf Point (US DOE/NREL TMY3), set one
// after the other as if they were measured years
import { assert, assertEquals, assertRejects } from "@std/assert";
import { min } from "d3-array";
import { openStudy, startRun } from "winterground/study/mod.ts";
import { FIRST_OF_JULY, InputError } from "../../../lib/basics/mod.ts";
import { measuredWinter } from "../../../lib/climate/mod.ts";
import { inTemporary } from "../../harness/in_temporary.ts";
import { writeSmallStudy } from "../../harness/small_study.ts";
import { oddsFigures } from "../../../lib/worth/odds/figures.ts";

const OPEN_DATA = Deno.env.get("OPEN_DATA");
const SKIPPED = OPEN_DATA === undefined ? " (skipped: OPEN_DATA is not set)" : "";
const YEARS = ["mn_international_falls", "nd_fargo", "mt_wolf_point_fort_peck"];
const FILES = [...YEARS, ...YEARS].map((name, k) => [`y${k}.csv`, name] as const);

/** The small study with measured years; paths of the study. */
async function withYears(folder: string, names: readonly string[], winters = 20): Promise<string> {
  for (const [file, name] of FILES) {
    await Deno.copyFile(`${OPEN_DATA}/climate/tmy3_${name}.csv`, `${folder}/${file}`);
  }
  const list = names.map((name) => `{file: ${name}}`).join(", ");
  return await writeSmallStudy(
    folder,
    (text) =>
      text.replace("normals.csv}", `normals.csv, measuredYears: [${list}]}`)
        .replace("winters: 0", `winters: ${winters}`),
  );
}

Deno.test({
  name: `six measured years give the five winters between them, run as they are${SKIPPED}`,
  ignore: OPEN_DATA === undefined,
  fn: () =>
    inTemporary(async (folder) => {
      const study = await openStudy(await withYears(folder, FILES.map(([file]) => file)));
      assertEquals(study.measuredYears.length, 6);
      const [falls, fargo] = study.measuredYears;
      const winter = measuredWinter(study.measuredYears, 0);
      assertEquals(winter.dryBulb.slice(0, FIRST_OF_JULY), fargo!.dryBulb.slice(0, FIRST_OF_JULY));
      assertEquals(winter.windSpeed.slice(FIRST_OF_JULY), falls!.windSpeed.slice(FIRST_OF_JULY));
      assert(
        study.notices.some(({ text }) => text.includes("y2.csv") && text.includes("not of the")),
      );
      const odds = (await startRun(study, { cacheFolder: null }).odds())!;
      assertEquals([odds.winters, odds.spread], [5, "measured winters"]);
      odds.list.forEach(({ coldestOutdoors }, k) =>
        assertEquals(coldestOutdoors, min(measuredWinter(study.measuredYears, k).dryBulb))
      );
      // the first winter and the fourth are of the same two years
      assertEquals({ ...odds.list[3]!, winter: 0 }, odds.list[0]);
      // five winters: the band of the middle one runs from the least to the greatest, a rare one is not stated
      const coldest = odds.list.map(({ withStore }) => withStore.coldestHour);
      const { median, rare10 } = odds.coldestHour.withStore;
      assertEquals([median.low, median.high, rare10], [
        Math.min(...coldest),
        Math.max(...coldest),
        null,
      ]);
      const figures = Object.fromEntries(oddsFigures(odds));
      assert(figures["worth.savedHeatOfWinters"]!.label.includes("measured winters"));
    }),
});

Deno.test({
  name:
    `a measured year that is missing, faulty or one of too few is named with its line${SKIPPED}`,
  ignore: OPEN_DATA === undefined,
  fn: () =>
    inTemporary(async (folder) => {
      const names = FILES.map(([file]) => file);
      const fault = async (path: string) =>
        (await assertRejects(() => openStudy(path), InputError) as Error).message;
      const missing = await fault(await withYears(folder, [...names.slice(0, 5), "none.csv"]));
      assert(/small\.yaml:3:.*none\.csv/.test(missing), missing);
      const few = await fault(await withYears(folder, names.slice(0, 3)));
      assert(/:3:.*3 measured years: expected 6/.test(few), few);
      const path = await withYears(folder, names);
      const lines = (await Deno.readTextFile(`${folder}/y4.csv`)).split("\n");
      lines[40] = lines[40]!.replace(/,/, ",,,x,");
      await Deno.writeTextFile(`${folder}/y4.csv`, lines.join("\n"));
      const faulty = await fault(path);
      assert(/y4\.csv:41/.test(faulty), faulty);
    }),
});

Deno.test({
  name:
    `measured years are part of the inputs, and none are run where no winters are wanted${SKIPPED}`,
  ignore: OPEN_DATA === undefined,
  fn: () =>
    inTemporary(async (folder) => {
      const names = FILES.map(([file]) => file);
      const with_ = await openStudy(await withYears(folder, names, 0));
      const other = await openStudy(await withYears(folder, [...names.slice(1), names[0]!], 0));
      assert(with_.inputHash !== other.inputHash);
      assertEquals(
        with_.files.filter(({ by }) => by.startsWith("climate.measuredYears")).length,
        6,
      );
      assertEquals(await startRun(with_, { cacheFolder: null }).odds(), null);
    }),
});
