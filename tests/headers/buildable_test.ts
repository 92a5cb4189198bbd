import { assert, assertAlmostEquals, assertEquals, assertStringIncludes } from "@std/assert";
import fc from "fast-check";
import { InputErrors } from "../../lib/basics/mod.ts";
import {
  bendLoss,
  bendLosses,
  buildDoubts,
  buildFaults,
  type BuriedField,
  buryHeaders,
  headersChapter,
  holeLayout,
} from "../../lib/headers/mod.ts";
import type { TubesInputs } from "../../lib/tubes/mod.ts";
import { openSmallStudy } from "../harness/small_study.ts";
import { field, HEADERS, STATE } from "./fields.ts";

function buried(
  tubes: Partial<TubesInputs>,
  headers: Partial<BuriedField["headers"]> = {},
): BuriedField {
  const diameter = headers.diameter ?? HEADERS.diameter;
  return {
    tubes: field(tubes),
    slope: 0.01,
    headers: { diameter, returnDiameter: diameter, groups: 1, ...headers },
  };
}

Deno.test("two layers 0.4 m apart go into one header of 0.25 m only with bends of 45°", () => {
  // Property: hand arithmetic: tubes 0.2 m above and below the centre of a pipe of radius 0.125 m;
  // (0.2 / sin 45°) − 0.125 m of tube up to the bend, which lies 0.2 m before the header's centre
  const [pair] = buryHeaders(buried({ layers: 2 }, { diameter: 0.25 }));
  assertEquals(pair!.rows.map(({ bend }) => bend), [45, 45]);
  assertEquals(pair!.rows.map(({ supply }) => supply.angle), [45, -45]);
  assertAlmostEquals(pair!.rows[0]!.offset, -0.2, 1e-12);
  assertAlmostEquals(pair!.rows[0]!.run, 0.2, 1e-12);
  assertAlmostEquals(pair!.rows[0]!.return.slant, 0.2 * Math.SQRT2 - 0.125, 1e-12);
});

Deno.test("layers within a third of the header's radius run straight into it", () => {
  // Property: hand arithmetic: 60 mm off the centre of a pipe of 0.4 m: asin(0.06/0.2) below it
  const headers = { diameter: 0.4, returnDiameter: 0.5 };
  const [pair] = buryHeaders(buried({ layers: 2, layerSpacing: 0.12 }, headers));
  assertEquals(pair!.rows.map(({ bend }) => bend), [0, 0]);
  assertAlmostEquals(pair!.rows[1]!.supply.angle, -Math.asin(0.3) * 180 / Math.PI, 1e-9);
  assertAlmostEquals(pair!.rows[1]!.return.angle, -Math.asin(0.24) * 180 / Math.PI, 1e-9);
});

Deno.test("every bent tube keeps a diameter of straight tube before its bend", () => {
  // Property: geometry of the triangle between hole, bend and layer, for any sizes
  fc.assert(fc.property(
    fc.integer({ min: 2, max: 4 }),
    fc.double({ min: 0.2, max: 1, noNaN: true }),
    fc.double({ min: 0.15, max: 1.2, noNaN: true }),
    fc.double({ min: 0.15, max: 1.2, noNaN: true }),
    (layers, layerSpacing, diameter, returnDiameter) => {
      const one = buried({ layers, layerSpacing }, { diameter, returnDiameter });
      for (const row of buryHeaders(one).flatMap(({ rows }) => rows)) {
        if (row.bend === 0) continue;
        for (
          const [end, radius] of [[row.supply, diameter], [row.return, returnDiameter]] as const
        ) {
          assert(end.slant >= 0.118 - 1e-9);
          const reach = radius / 2 + end.slant;
          assertAlmostEquals(reach ** 2, row.run ** 2 + row.offset ** 2, 1e-9);
          assertAlmostEquals(-reach * Math.sin(end.angle * Math.PI / 180), row.offset, 1e-9);
        }
      }
    },
  ));
});

Deno.test("bends raise the pressure of the tubes that have them, and of no others", () => {
  // Property: hand arithmetic: two elbows of 0.2 velocity heads at 45°; none in the middle of three
  assertAlmostEquals(bendLoss(45), 0.4, 1e-12);
  const three = buried({ layers: 3, count: 15 }, { diameter: 0.45 });
  const losses = bendLosses(three);
  three.tubes.positions.forEach(({ depth }, tube) =>
    assertEquals(losses[tube]! > 0, Math.abs(depth - 1.2) > 0.01)
  );
  // the same network with layers 0.12 m apart, straight into the header, and 0.4 m apart
  const headers = { ...HEADERS, diameter: 0.43, returnDiameter: 0.43 };
  const [close, apart] = [field({ layers: 2, layerSpacing: 0.12 }), field({ layers: 2 })];
  const added = bendLosses({ tubes: apart, headers });
  assert(bendLosses({ tubes: close, headers }).every((loss) => loss === 0));
  assert(added[0]! > 0);
  added.forEach((loss) => assertAlmostEquals(loss, added[0]!, 1e-12));
  const rise = headersChapter(headers, apart, STATE).pressureDrop -
    headersChapter(headers, close, STATE).pressureDrop;
  const head = apart.pressureDrop / apart.lossCoefficient;
  assertAlmostEquals(rise / head, added[0]!, 0.1 * added[0]!);
});

Deno.test("buildFaults() names holes that overlap, headers that collide and headers that leave no tube", () => {
  // Property: hand arithmetic in each line
  const keys = (one: BuriedField) => buildFaults(one).map(({ key }) => key);
  assertEquals(keys(buried({})), []);
  // three rows 60° apart on a pipe of 0.2 m: 0.105 m between centres of holes of 0.121 m
  assertEquals(keys(buried({ layers: 3 }, { diameter: 0.2 })), ["headers.diameter"]);
  // two layers of 8 in three groups: a column of tubes is torn between two headers
  assertEquals(keys(buried({ layers: 2 }, { groups: 3 })), ["headers.groups"]);
  assertEquals(keys(buried({ layers: 2 }, { groups: 4 })), []);
  // side by side with 0.15 m between tubes: 2 × (0.0605 + 0.02) + 0.015 m are needed
  assertEquals(keys(buried({ spacing: 0.15 }, { groups: 2 })), ["headers.groups"]);
  assertEquals(keys(buried({ spacing: 0.18 }, { groups: 2 })), []);
  assertEquals(keys(buried({ length: 0.5 }, { diameter: 0.6 })), ["tubes.length"]);
});

Deno.test("buildDoubts() names thin wall between holes and headers close under the floor", () => {
  // Property: hand arithmetic: 0.14 − 0.121 m of wall; header of 1.3 m at 0.8 m, 75 mm of fall
  assertEquals(buildDoubts(buried({})), []);
  assertStringIncludes(
    buildDoubts(buried({ spacing: 0.14 }))[0]!,
    "Only 19\u00a0mm (0.7\u00a0in) of wall",
  );
  assertStringIncludes(
    buildDoubts(buried({}, { diameter: 1.3 }))[0]!,
    "Only 75\u00a0mm (3.0\u00a0in) of soil",
  );
  assertStringIncludes(
    buildDoubts(buried({}, { diameter: 1.5 }))[0]!,
    "rises 25\u00a0mm (1.0\u00a0in) above",
  );
});

Deno.test("holes of the return header are told where it has another size", () => {
  // Property: arc = angle × radius on either pipe
  const one = buried({ layers: 2 }, { diameter: 0.3, returnDiameter: 0.4 });
  const [pair] = buryHeaders(one);
  for (const hole of holeLayout(one, pair!).holes) {
    assertAlmostEquals(hole.returnAround / hole.around, 4 / 3, 1e-9);
  }
});

Deno.test("a study of which the field cannot be built is refused with the key to change", async () => {
  // Property: message with line and remedy
  const refused = async (tubes: string, headers: string): Promise<string> => {
    try {
      await openSmallStudy((text) =>
        text.replace(/tubes: .*\n/, `tubes: {${tubes}, airFlow: 250 cfm}\nheaders: {${headers}}\n`)
      );
    } catch (error) {
      assert(error instanceof InputErrors);
      return error.message;
    }
    return "";
  };
  const overlap = await refused("count: 6, layers: 3", "groups: 1, diameter: 20 cm");
  assertStringIncludes(
    overlap,
    "overlap on a header of 200\u00a0mm (7.9\u00a0in) that takes 6 tubes of 3 layers",
  );
  assertStringIncludes(overlap, "small.yaml:6");
  assertStringIncludes(await refused("count: 16, layers: 2", "groups: 3"), "side by side");
  assertEquals(await refused("count: 16, layers: 2", "groups: 4"), "");
});
