// Property: the day ahead starts where forecast and log meet, looks at nothing logged later, and says why
// where it cannot start.
import { assert, assertEquals, assertMatch } from "@std/assert";
import { AS_PLANNED } from "../../../lib/measured/calibrated/replay.ts";
import { calibrationTakes } from "../../../lib/measured/calibrated/takes.ts";
import { lookAhead, type TomorrowRequest } from "../../../lib/measured/calibrated/tomorrow.ts";
import { defaultStudyPath, openStudy, startRun } from "../../../lib/study/mod.ts";

const study = await openStudy(defaultStudyPath());
const run = startRun(study);
const { texts, setting, plan } = calibrationTakes(study, {
  soil: await run.soil(),
  tubes: await run.tubes(),
  headers: await run.headers(),
  fan: await run.fan(),
});
const request: TomorrowRequest = {
  texts,
  forecast: study.measured.texts!.forecast!,
  setting,
  plan: { ...plan!, inputs: { ...plan!.inputs, slices: 1 } },
  factors: AS_PLANNED,
  heaterPower: 0,
  residuals: [-1, 0, 1],
};
const found = lookAhead(request);

Deno.test("lookAhead(): seven days from the hour in which forecast and log meet", () => {
  const [first] = request.forecast!.text.split("\n").slice(1);
  assertEquals(found.reason, null);
  assertEquals(found.hours.length, 168);
  assert(first!.startsWith(found.hours[0]!.time));
  assertEquals(found.hours[0]!.outdoors, Number(first!.split(",")[1]));
  assert(found.hours.every(({ low, inside, high }) => low <= inside && inside <= high));
  const coldest = (of: (hour: typeof found.hours[number]) => number) =>
    Math.min(...found.hours.map(of));
  assert(coldest(({ heated }) => heated) > coldest(({ withoutFan }) => withoutFan));
  assert(Math.abs(found.ahead!.storeGap!) < 3, `${found.ahead!.storeGap}`);
});

Deno.test("lookAhead(): what was logged after the forecast's start changes nothing", () => {
  const start = `${found.hours[0]!.time.slice(0, 10)}`;
  const later = texts!.logs.map(({ name, text }) => ({
    name,
    // a day later on any logger's clock
    text: text.split("\n").filter((line, k) => k === 0 || line.slice(0, 10) <= start).join("\n"),
  }));
  const cut = lookAhead({ ...request, texts: { ...texts!, logs: later } });
  const misses = cut.hours.map(({ inside }, k) => Math.abs(inside - found.hours[k]!.inside));
  // faults found by the later log, such as a drift, may leave out earlier readings
  assert(Math.max(...misses) < 0.5, `${Math.max(...misses)}`);
});

Deno.test("lookAhead(): no log, no forecast, or a forecast elsewhere in time says why", () => {
  assertMatch(lookAhead({ ...request, texts: null }).reason!, /names no logs/);
  assertMatch(lookAhead({ ...request, forecast: null }).reason!, /names no forecast/);
  const elsewhere = request.forecast!.text.replaceAll("2026-01", "2027-01").replaceAll(
    "2026-02",
    "2027-02",
  );
  const none = lookAhead({ ...request, forecast: { name: "f.csv", text: elsewhere } });
  assertMatch(none.reason!, /starts 2027-01-31 00:00, and the log goes from 2025-11-01/);
  assertEquals(none.hours, []);
});
