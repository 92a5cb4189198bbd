import { assert, assertStringIncludes } from "@std/assert";
import * as measured from "winterground/measured";
import { fanAirPath, fanChapter } from "../../../lib/fan/mod.ts";
import { headersChapter, summariseHeaders } from "../../../lib/headers/mod.ts";
import { blockedLimits, monitoringPlan } from "../../../lib/measured/mod.ts";
import { DEFAULTS } from "../../harness/defaults.ts";
import { field, HEADERS, STATE, TUBES } from "../../headers/fields.ts";
import { madeYear } from "../../measured/plan/made_year.ts";
import { checkFigures } from "../figure_rules.ts";

const tubes = field();
const inputs = { ...HEADERS, layout: "Z" as const };
const shared = summariseHeaders(headersChapter(inputs, tubes, STATE), tubes);
const FAN = { ...DEFAULTS.fan, fan: "duct-315", count: 1, speed: 0.7, riserDiameter: 0.315 };
const surroundings = { tubesInputs: TUBES, headers: shared, ...STATE };
const { curve } = fanChapter(FAN, surroundings);
const headers = { inputs, tubes, state: STATE };
const plan = monitoringPlan({
  places: { tubes, shares: shared.shares, houseAlong: 24, timeZone: -6, prices: null },
  houseAcross: 8,
  headers,
  shared,
  fan: { inputs: FAN, surroundings },
  curve,
  certainty: madeYear(),
  perforated: true,
});

checkFigures({
  map: [() => measured.sensorMap(plan), [
    "along the tubes, m",
    "garden_30 to garden_150",
    "store_1a",
  ]],
  section: [() => measured.sensorSection(plan), ["below the floor, m", "store_1a", "tube_"]],
  worth: [() => measured.sensorWorthChart(plan), ["%", "without air flow meter"]],
  blocked: [() => measured.blockedChart(plan), ["tubes shut", "resistance"]],
  commissioning: [() => measured.commissioningChart(plan), ["m/s", "tube"]],
});

Deno.test("the plan's tables say what the plan says, with cautions beside what can hurt", () => {
  // Property: display of what the chapter computed
  const plain = (item: { readonly "text/plain": string }) => item["text/plain"];
  const list = plain(measured.sensorListTable(plan));
  for (const { column, kind } of plan.sensors.sensors) {
    assertStringIncludes(list, column.sensor.name);
    const { low, high } = measured.LOG_QUANTITIES[column.sensor.quantity];
    assert(kind.accuracy < high - low, `${kind.name}: accuracy within what it can show`);
  }
  assertStringIncludes(plain(measured.sensorCostWords(plan)), "names no price list");
  const blocked = blockedLimits({ headers, path: fanAirPath(FAN, surroundings), curve });
  assertStringIncludes(plain(measured.blockedTable(plan)), blocked.limit.toFixed(3));
  const steps = plain(measured.commissioningSteps(plan));
  for (const word of ["Smoke test", "Leak test", "licensed electrician"]) {
    assertStringIncludes(steps, word);
  }
  const calendar = plain(measured.calendarTable(plan));
  for (const word of ["frost alarm", "filter", "radon"]) assertStringIncludes(calendar, word);
  assertStringIncludes(plain(measured.calendarMonthsTable(plan)), "January");
  assert(plain(measured.sensorCalibrationTable(plan)).includes("diffusivity"));
});
