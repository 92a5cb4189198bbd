import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { airProperties } from "../../lib/air/mod.ts";
import { tubes as tubesPart } from "../../lib/tubes/chapter.ts";
import {
  costClasses,
  effectivenessByLength,
  fieldPicks,
  fouledTubes,
  heatByLength,
  materialRows,
  tubesAtCounts,
  tubesAtFlows,
  tubeSpread,
} from "../../lib/tubes/mod.ts";
import { defaultStudyPath, openStudy } from "../../lib/study/mod.ts";
import { candidate, front } from "./candidates.ts";

const study = await openStudy(defaultStudyPath());
const { inputs, surroundings } = tubesPart.takes(study, {});
const tubes = tubesPart.compute({ inputs, surroundings });
const air = airProperties(surroundings.airTemperature, surroundings.pressure);

Deno.test("materialRows() gives the study's tube its own numbers and never helps it by its ribs", () => {
  // Property: agrees with the chapter; the wrong film is larger than the right one
  const rows = materialRows(tubes, { extraLosses: inputs.extraLosses, air });
  const own = rows.find((row) => row.product.id === inputs.tube)!;
  assertAlmostEquals(own.pressureDrop, tubes.pressureDrop, 1e-6 * tubes.pressureDrop);
  assertAlmostEquals(own.effectiveness, tubes.effectiveness, 1e-9);
  for (const row of rows) {
    assert(row.friction >= row.smoothFriction - 1e-12);
    if (row.wrongFilm !== null) assert(row.wrongFilm > row.film);
  }
});

Deno.test("effectivenessByLength() passes through the study's own point and grows by friction only", () => {
  // Property: consistent with the chapter's result at the study's length
  const rows = effectivenessByLength(tubes, 40);
  const own = rows[20]!;
  assertAlmostEquals(own.length, tubes.length, 1e-9);
  assertAlmostEquals(own.effectiveness, tubes.effectiveness, 1e-9);
  assertAlmostEquals(own.pressureDrop, tubes.pressureDrop, 1e-9);
  for (let i = 1; i < rows.length; i++) assert(rows[i]!.pressureDrop > rows[i - 1]!.pressureDrop);
});

Deno.test("tubeSpread() brackets the tube; more friction costs less than in proportion", () => {
  // Property: inlet and exit do not spread
  const { effectiveness: [poor, good], pressureDrop: [low, high] } = tubeSpread(tubes);
  assert(poor < tubes.effectiveness && tubes.effectiveness < good);
  assertAlmostEquals(low + high, 2 * tubes.pressureDrop, 1e-9 * tubes.pressureDrop);
  assert(high < 1.14 * tubes.pressureDrop && high > tubes.pressureDrop);
});

Deno.test("heatByLength() brings ever less with length, less still for a metre at ten days' wave a day", () => {
  // Property: monotone; a day's wave counts as one day
  const soil = { conductivity: 1.3, heatCapacity: 2.3e6 };
  const [day, spell] = heatByLength({ inputs, tubes, soil, air });
  for (const { rows } of [day!, spell!]) {
    for (let i = 1; i < rows.length; i++) {
      assert(rows[i]!.heat > rows[i - 1]!.heat);
      assert(rows[i]!.marginalHeat < rows[i - 1]!.marginalHeat);
    }
  }
  assertEquals(day!.rows[3]!.marginalHeatPerDay, day!.rows[3]!.marginalHeat);
  assertEquals(spell!.rows[3]!.marginalHeatPerDay, spell!.rows[3]!.marginalHeat / 5);
});

Deno.test("tubesAtFlows() and tubesAtCounts() hold the study's own row, whole layers, none twice", () => {
  // Property: agrees with the chapter
  const flows = tubesAtFlows(inputs, surroundings, [0.5, 1]);
  assertEquals(flows[1]!.pressureDrop, tubes.pressureDrop);
  assert(flows[0]!.pressureDrop < flows[1]!.pressureDrop);
  const few = tubesAtCounts({ ...inputs, count: 4, layers: 2 }, surroundings, [0.4, 0.5, 1]);
  assertEquals(few.map((row) => row.count), [2, 4]);
});

Deno.test("fouledTubes() takes more air with more silt and shuts the tube with the deepest sag", () => {
  // Property: monotone; limits
  const rows = fouledTubes(tubes, { slope: inputs.slope, air });
  const silt = rows.filter((row) => row.litres === null).map((row) => row.flow);
  const sags = rows.filter((row) => row.litres !== null).map((row) => row.flow);
  for (const list of [silt, sags]) {
    for (let i = 1; i < list.length; i++) assert(list[i]! <= list[i - 1]!);
    assert(list[0]! < 1 + 1e-12);
  }
  assertEquals(sags.at(-1), 0);
  for (const row of rows) assert(row.heat <= 1 && row.heat >= 0);
});

Deno.test("costClasses() splits the front into three parts of like number", () => {
  // Property: every class holds a third, within one
  const [low, high] = costClasses(front);
  const cheap = front.filter(({ cost }) => cost < low).length;
  const dear = front.filter(({ cost }) => cost >= high).length;
  assertEquals([cheap, dear], [4, 4]);
});

Deno.test("fieldPicks() takes the ends of the front, and the study alone where it is empty", () => {
  // Property: cheapest first, most heat last of the made-up front
  const own = candidate(3);
  const picks = fieldPicks({ front, own });
  assertEquals(picks[0]!.field, front[0]);
  assertEquals(picks[1]!.field, front.at(-1));
  assertEquals(fieldPicks({ front: [], own }), [{ why: "this study", field: own }]);
  assertEquals(fieldPicks({ front: [], own: null }), []);
});
