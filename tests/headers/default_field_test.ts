import { assert, assertEquals } from "@std/assert";
import {
  buildDoubts,
  buildFaults,
  buryHeaders,
  fieldPit,
  headerCover,
  holeLayout,
} from "../../lib/headers/mod.ts";
import { checkStudyText } from "../../lib/study/file/check_study.ts";
import { deriveDefaults } from "../../lib/study/file/derive.ts";
import { findTube, footingLine, tubePositions } from "../../lib/tubes/mod.ts";

function inputsOf(length: number, width: number, more = ""): ReturnType<typeof deriveDefaults> {
  const text = `
place: {name: Testfield, latitude: 49 deg, longitude: -100 deg, elevation: 500 m, timeZone: UTC-6}
climate: {normals: normals.csv}
house: {length: ${length} m, width: ${width} m}
${more}`;
  return deriveDefaults(checkStudyText(text, "test.yaml"));
}

function fieldOf({ inputs }: ReturnType<typeof deriveDefaults>) {
  const { tubes, headers } = inputs;
  return {
    tubes: { positions: tubePositions(tubes), product: findTube(tubes.tube), length: tubes.length },
    slope: tubes.slope,
    headers,
  };
}

const HOUSES = [[4, 3], [6, 4], [12, 6], [24, 8], [29, 9], [30, 6], [50, 9], [60, 12]] as const;

Deno.test("the field of a study that gives only the size of its house can be built", () => {
  // Property: straight tubes, wall between the holes, soil over the headers, headers clear of each other,
  // and a pit that does not reach under the footings
  for (const [length, width] of HOUSES) {
    for (const direction of ["along", "across"]) {
      for (const tube of ["corrugated-4in", "corrugated-3in", "smooth-160mm"]) {
        const name = `${length} × ${width} m, ${direction}, ${tube}`;
        const derived = inputsOf(length, width, `tubes: {direction: ${direction}, tube: ${tube}}`);
        const field = fieldOf(derived);
        const pairs = buryHeaders(field);
        assertEquals(buildFaults(field), [], name);
        assertEquals(buildDoubts(field), [], name);
        assert(headerCover(field) >= 0.1, name);
        for (const pair of pairs) {
          assertEquals(pair.rows.map(({ bend }) => bend), [0], name);
          assert(!holeLayout(field, pair).tooClose, name);
        }
        const house = direction === "along"
          ? { along: length, across: width }
          : { along: width, across: length };
        const { distance } = footingLine(fieldPit(field), { footingDepth: null, house });
        assert(distance >= 0, `${name}: the pit reaches ${-distance} m under the footing`);
      }
    }
  }
});

Deno.test("the headers that a study leaves open follow its layers", () => {
  // Property: a pair for each layer, or several side by side; never one for layers far apart
  for (const layers of [1, 2, 3]) {
    const { inputs, taken } = inputsOf(12, 6, `tubes: {count: 12, layers: ${layers}}`);
    assertEquals(inputs.headers.groups, layers);
    assertEquals(taken.find(({ key }) => key === "headers.groups")!.value, String(layers));
  }
  const { inputs } = inputsOf(12, 6, "headers: {groups: 1}");
  assertEquals(inputs.headers.groups, 1);
  assertEquals(inputsOf(4, 3, "tubes: {count: 1}").inputs.tubes.layers, 1);
});
