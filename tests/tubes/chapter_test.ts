import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { airProperties } from "../../lib/air/mod.ts";
import { InputError, OutOfRangeError } from "../../lib/basics/mod.ts";
import {
  conduitOf,
  findTube,
  floorExtents,
  frictionColebrook,
  frictionFactor,
  nusseltTube,
  readTubes,
  tubeLoss,
  tubePositions,
  TUBES as TABLE,
  tubesByLayer,
  tubesChapter,
} from "../../lib/tubes/mod.ts";
import { field, STATE, TUBES } from "../headers/fields.ts";

Deno.test("tubesChapter() is consistent: flow, speed, loss and effectiveness belong together", () => {
  // Property: definitions
  const result = field();
  const air = airProperties(STATE.airTemperature, STATE.pressure);
  assertAlmostEquals(result.flowPerTube * result.count, TUBES.airFlow, 1e-12);
  assertAlmostEquals(
    result.airSpeed * Math.PI * result.diameter ** 2 / 4,
    result.flowPerTube,
    1e-12,
  );
  const head = air.density * result.airSpeed ** 2 / 2;
  assertAlmostEquals(result.pressureDrop, result.lossCoefficient * head, 1e-9);
  assertAlmostEquals(result.effectiveness, 1 - Math.exp(-result.transferUnits), 1e-12);
  assertEquals(result.totalLength, 240);
  assertEquals(result.positions.length, 16);
});

Deno.test("tubesChapter() loses less and exchanges as well in smooth tube as in corrugated", () => {
  // Property: corrugation raises friction, not the film
  const corrugated = field();
  const smooth = field({ tube: "smooth-4in" });
  assert(smooth.pressureDrop < 0.65 * corrugated.pressureDrop);
  assertAlmostEquals(smooth.effectiveness, corrugated.effectiveness, 1e-9);
});

Deno.test("tubesChapter() refuses nonsense and lists the known tubes", () => {
  // Property: bad input
  const run = (changes: Partial<typeof TUBES>) => () => field(changes);
  assertThrows(run({ length: -3 }), OutOfRangeError, "tube length");
  assertThrows(run({ count: 0 }), OutOfRangeError, "tube count");
  assertThrows(run({ airFlow: Number.NaN }), OutOfRangeError, "air flow");
  assertThrows(run({ layers: 17 }), OutOfRangeError, "layers");
  assertThrows(run({ tube: "gold" }), InputError, "corrugated-4in");
});

Deno.test("tubesChapter() gives notices for fields that do not fit, overlap or lie level", () => {
  // Property: notices follow the inputs
  const has = (changes: Partial<typeof TUBES>, text: string): boolean =>
    field(changes).notices.some((entry) => entry.text.includes(text));
  assert(!has({}, "the floor only"));
  assert(has({ length: 30 }, "long, but the floor only 24.0\u00a0m (78.7\u00a0ft)"));
  assert(has({ spacing: 0.6 }, "wide, but the floor only 8.0\u00a0m (26.2\u00a0ft)"));
  assert(!has({ spacing: 0.6, direction: "across", length: 7 }, "the floor only"));
  assert(has({ spacing: 0.1 }, "tubes overlap"));
  assert(has({ layers: 2, layerSpacing: 0.1 }, "layers overlap"));
  assert(has({ slope: 0.002 }, "Legionella"));
  assert(has({ airFlow: 16 * 0.04 }, "use 1.50 to 3.00\u00a0m/s (295 to 591\u00a0ft/min)"));
  const area = Math.PI / 4 * field({}).diameter ** 2;
  assert(!has({ airFlow: 16 * 2.9 * area }, "The air moves"), "the study's default is 2.5 m/s");
  assert(has({ airFlow: 16 * 0.003 }, "puddle"));
});

Deno.test("tubePositions() centres every layer and keeps count, spacing and depths", () => {
  // Property: geometry
  const layouts = fc.record({
    count: fc.integer({ min: 1, max: 80 }),
    layers: fc.integer({ min: 1, max: 4 }),
    spacing: fc.double({ min: 0.2, max: 1, noNaN: true }),
    layerSpacing: fc.constant(0.3),
    depth: fc.constant(0.6),
  });
  fc.assert(fc.property(layouts, (layout) => {
    const positions = tubePositions(layout);
    assertEquals(positions.length, layout.count);
    tubesByLayer(layout.count, layout.layers).forEach((count, layer) => {
      const depth = layout.depth + layer * 0.3;
      const row = positions.filter((position) => position.depth === depth);
      assertEquals(row.length, count);
      assertAlmostEquals(row.reduce((sum, { x }) => sum + x, 0), 0, 1e-9);
      for (let i = 1; i < row.length; i++) {
        assertAlmostEquals(row[i]!.x - row[i - 1]!.x, layout.spacing, 1e-9);
      }
    });
  }));
});

Deno.test("floorExtents() takes the length of the house as its length, also where it is the shorter side", () => {
  // Property: definition; a house wider than long is warned of tubes that reach beyond its length
  const wide = { length: 8, width: 24 };
  assertEquals(floorExtents(wide, "along"), { along: 8, across: 24 });
  assertEquals(floorExtents(wide, "across"), { along: 24, across: 8 });
  const texts = (direction: "along" | "across") =>
    tubesChapter({ ...TUBES, direction }, { house: wide, ...STATE }).notices
      .map(({ text }) => text).join("\n");
  assert(texts("along").includes("but the floor only"), texts("along"));
  assert(!texts("across").includes("but the floor only"), texts("across"));
});

Deno.test("frictionColebrook() satisfies its own equation everywhere", () => {
  // Property: definition
  fc.assert(fc.property(
    fc.double({ min: 3.4, max: 8, noNaN: true }),
    fc.double({ min: 0, max: 0.05, noNaN: true }),
    (exponent, roughness) => {
      const reynolds = 10 ** exponent;
      const friction = frictionColebrook(reynolds, roughness);
      const right = -2 * Math.log10(roughness / 3.7 + 2.51 / (reynolds * Math.sqrt(friction)));
      assertAlmostEquals(1 / Math.sqrt(friction), right, 1e-10);
    },
  ));
});

Deno.test("friction, film and pressure of a tube are continuous and rise with the flow", () => {
  // Property: no jump from laminar to turbulent flow
  const air = airProperties(20, 101325);
  for (const product of TABLE) {
    let before = 0;
    for (let flow = 0.0002; flow < 0.02; flow *= 1.02) {
      const loss = tubeLoss({ product, length: 15, airFlow: flow, extraLosses: 0, air });
      assert(loss.pressureDrop > before, `${product.id} at ${flow} m³/s`);
      assert(before === 0 || loss.pressureDrop < 1.2 * before);
      before = loss.pressureDrop;
    }
    for (const edge of [2300, 4000]) {
      const conduit = conduitOf(product);
      assertAlmostEquals(frictionFactor(conduit, edge - 1e-6), frictionFactor(conduit, edge), 1e-8);
      assertAlmostEquals(nusseltTube(edge - 1e-6, 0.71), nusseltTube(edge, 0.71), 1e-7);
    }
  }
});

Deno.test("readTubes() tells file, line and column of a faulty row", () => {
  // Property: bad input
  const head = "id,name,inside_diameter_m,outside_diameter_m,wall,manning_n_s_per_m1_3," +
    "roughness_m,perforated,source\n";
  const row = "a,A,0.1,0.11,corrugated,0.015,,yes,me\n";
  assertEquals(readTubes(`# remark\n${head}${row}`, "t.csv")[0]!.manning, 0.015);
  const bad = (text: string, part: string): unknown =>
    assertThrows(() => readTubes(head + text, "t.csv"), InputError, part);
  bad(row.replace("corrugated", "woven"), 't.csv:2 (column "wall")');
  bad(row.replace("0.015", ""), "Manning n");
  bad(row.replace("corrugated,0.015,", "smooth,,"), "roughness");
  bad(row.replace("0.11", "0.09"), "outside > inside > 0");
  bad(row.replace("0.1,", "wide,"), 'Cannot read "wide" as a number');
  assertEquals(findTube("corrugated-4in").insideDiameter, 0.102);
});

Deno.test("tubesChapter() shares the air over the tubes of all layers", () => {
  // Property: tubes in two layers have the flow, loss and exchange of the same tubes in one
  const [one, two] = [field(), field({ layers: 2 })];
  assertAlmostEquals(two.flowPerTube * 16, TUBES.airFlow, 1e-12);
  for (const key of ["airSpeed", "pressureDrop", "effectiveness"] as const) {
    assertAlmostEquals(two[key], one[key], 1e-12, key);
  }
});
