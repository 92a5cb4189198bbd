// Property: the new study differs from the old one in the fitted values alone
import { assert, assertEquals, assertThrows } from "@std/assert";
import Papa from "papaparse";
import { InputError } from "../../../lib/basics/mod.ts";
import { type Estimate, fittedStudy } from "../../../lib/measured/mod.ts";
import { openStudyText } from "../../../lib/study/mod.ts";

const DEMO = new URL("../../../data/studies/demo/harrow-bend.yaml", import.meta.url);
const text = Deno.readTextFileSync(DEMO);
const one = (key: string | null, value: number, spread: number, unit = ""): Estimate => ({
  name: `value of ${key}`,
  key,
  unit,
  value,
  standardUncertainty: spread,
  low: value - 2 * spread,
  high: value + 2 * spread,
});

const FITTED = [
  one("house.leakage", 0.6512, 0.031, "1/h"),
  one("house.leakageWind", 0.1041, 0.009, "ach/(m/s)"),
  one("soil.measuredConductivity", 1.1, 0.12, "W/(m K)"),
  one("house.leafArea", 1.62, 0.2),
  one("fan.speed", 0.7225, 0.01),
  one("house.curtain.edgeLeak", 14.2, 2, "%"),
];

Deno.test("fittedStudy(): comments and layout stay, each fitted line carries its interval", () => {
  // Property: as many lines differ as keys were fitted, and one more where the default stood
  const { text: now, changed, left } = fittedStudy(text, "demo.yaml", FITTED);
  assertEquals(changed.length, FITTED.length);
  assertEquals(left, []);
  const [before, after] = [text.split("\n"), now.split("\n")];
  assertEquals(after.length, before.length + 1);
  const added = after.filter((line) => !before.includes(line));
  assertEquals(added.length, FITTED.length);
  for (const line of added) assert(/# measured: \S+ to .*, 95 %/.test(line), line);
  assert(now.includes("leakage: 0.651 1/h # measured: 0.589 to 0.713 1/h, 95 %\n"), now);
  assert(
    /speed: 0\.72[23] # measured: 0\.70[23] to 0\.74[23], 95 %; turned down: at full/.test(now),
    now,
  );
  assert(now.includes("leafArea: 1.62 # measured"));
  // fitting once more replaces the interval and leaves the remark
  const again = fittedStudy(now, "demo.yaml", [one("fan.speed", 0.8, 0.01)]).text;
  assert(again.includes("speed: 0.8 # measured: 0.78 to 0.82, 95 %; turned down"), again);
});

Deno.test("fittedStudy(): the study opens and nothing but the fitted values differs", async () => {
  // Property: checked by the study's own schema
  const path = DEMO.pathname;
  const old = await openStudyText(text, path);
  const now = await openStudyText(fittedStudy(text, path, FITTED).text, path);
  assertEquals(now.house.leakage, 0.651 / 3600 * 3600);
  assertEquals(now.soil.measuredConductivity, 1.1);
  assertEquals(now.house.leafArea, 1.62);
  assertEquals(now.house.curtain?.edgeLeak, 0.142);
  const { leakage: _a, leakageWind: _b, leafArea: _c, curtain: oldCurtain, ...oldHouse } =
    old.house;
  const { leakage: _d, leakageWind: _e, leafArea: _f, curtain: newCurtain, ...newHouse } =
    now.house;
  assertEquals(newHouse, oldHouse);
  assertEquals({ ...newCurtain, edgeLeak: 0 }, { ...oldCurtain, edgeLeak: 0 });
  assertEquals(
    { ...now.soil, measuredConductivity: null },
    { ...old.soil, measuredConductivity: null },
  );
  assertEquals(now.tubes, old.tubes);
  assertEquals({ ...now.fan, speed: 0 }, { ...old.fan, speed: 0 });
  assertEquals([now.store, now.headers, now.worth], [old.store, old.headers, old.worth]);
});

Deno.test("fittedStudy(): what is not identified stays, with the reason, in the table too", () => {
  // Property: infinite interval, wider than the prior, outside it, no key, two stages for one key
  const unsure = { ...one("house.leakage", 0.6, 0.5, "1/h"), low: -Infinity, high: Infinity };
  const priors = {
    "soil.measuredConductivity": { low: 0.8, high: 1.8 },
    "fan.speed": { low: 0.5, high: 1 },
  };
  const found = fittedStudy(text, "demo.yaml", [
    unsure,
    one("soil.measuredConductivity", 1.2, 0.4, "W/(m K)"),
    one("fan.speed", 1.4, 0.02),
    one(null, 210, 4, "W/K"),
    one("house.leafArea", 1, 0.1),
    one("house.leafArea", 2, 0.1),
  ], priors);
  assertEquals(found.text, text);
  assertEquals(found.changed, []);
  const reasons = found.left.map(({ reason }) => reason);
  for (
    const [i, words] of [
      "do not identify",
      "wider than what was known",
      "look for a fault",
      "no key",
      "two stages",
      "two stages",
    ].entries()
  ) {
    assert(reasons[i]!.includes(words), reasons[i]!);
  }
  const rows =
    Papa.parse<Record<string, string>>(found.table, { header: true, skipEmptyLines: true }).data;
  assertEquals(rows.map((row) => row["remark"]), reasons);
  assertEquals(Number(rows[3]!["value"]), 210);
});

Deno.test("fittedStudy(): flow maps, new sections, files that cannot take a value", () => {
  // Property: valid YAML comes out, or a fault that says where
  const flow = fittedStudy("house: {length: 12 m, leakage: 1 1/h}\n", "a.yaml", [
    one("house.leakage", 0.5, 0.01, "1/h"),
    one("house.leakageWind", 0.1, 0.01, "ach/(m/s)"),
    one("fan.speed", 0.9, 0.1),
  ]).text;
  assertEquals(
    flow,
    "house: {leakageWind: 0.1 ach/(m/s), length: 12 m, leakage: 0.5 1/h}\n" +
      "fan:\n  speed: 0.9 # measured: 0.7 to 1.1, 95 %\n",
  );
  assertThrows(
    () => fittedStudy("- a\n", "b.yaml", [one("fan.speed", 1, 0.1)]),
    InputError,
    "expected keys with values",
  );
  const months = "house:\n  leafArea: [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1]\n";
  assertThrows(
    () => fittedStudy(months, "c.yaml", [one("house.leafArea", 1, 0.1)]),
    InputError,
    "write one value for the year first",
  );
});
