// Property: nothing is found in the demo's winter where no fault is planted: without any error of the
// sensors, and with other errors than those of the demo.
import { assertEquals } from "@std/assert";
import { DEMO_PLACES } from "../../../lib/measured/demo/instruments.ts";
import { builtRequest, DEMO_TRUTH } from "../../../lib/measured/demo/known_truth.ts";
import { trueYear } from "../../../lib/measured/demo/true_year.ts";
import { winterFiles } from "../../../lib/measured/demo/winter_files.ts";
import { parseLogMap, readLog } from "../../../lib/measured/mod.ts";
import { coarseRequest } from "../../../lib/store/takes.ts";
import { defaultStudyPath, openStudy, startRun } from "../../../lib/study/mod.ts";

const DAY = 86400;
const TIME = { from: 304 * DAY, lasts: 151 * DAY, start: Date.UTC(2025, 10, 1, 6) / 1000 };

Deno.test("readLog(): nothing is found in the demo's winter without planted faults", async () => {
  const study = await openStudy(defaultStudyPath());
  const run = startRun(study);
  const earlier = {
    soil: await run.soil(),
    tubes: await run.tubes(),
    headers: await run.headers(),
    fan: await run.fan(),
  };
  const plan = coarseRequest({ ...study, store: { ...study.store, slices: 1 } }, earlier);
  const year = trueYear(builtRequest(plan, DEMO_TRUTH), {
    ...DEMO_PLACES,
    fromHour: TIME.from / 3600,
    hours: TIME.lasts / 3600 + 3,
  });
  for (const seed of [null, 1, 2, 3]) {
    const { map, logs } = winterFiles(year, study.climate, { ...TIME, seed, faults: [] });
    const log = readLog(
      logs.map(({ name, text }) => ({ file: name, text })),
      parseLogMap(map.text, map.name, study.climate.place.timeZone),
      { step: 900 },
    );
    // rows that the loggers lose are gaps, and no fault of a reading
    const found = log.findings.filter(({ kind }) => kind !== "gap");
    assertEquals(found.map(({ message }) => message), [], `seed ${seed}`);
    if (seed === null) assertEquals(log.findings, []);
  }
});
