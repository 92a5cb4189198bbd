import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { InputErrors } from "winterground/basics/mod.ts";
import { checkStudyText } from "winterground/study/file/check_study.ts";

const GOOD =
  `place: {name: Somewhere, latitude: 45 deg, longitude: -105 deg, elevation: 4900', timeZone: MST}
climate: {normals: normals.csv}
house:
  length: 96'
  width: 20 ft
`;

function refusals(text: string): string {
  try {
    checkStudyText(text, "typed.yaml");
  } catch (error) {
    assert(error instanceof InputErrors, String(error));
    return error.message;
  }
  return "";
}

Deno.test("a study is read as growers and engineers write it", () => {
  // Property: each form is the SI value it stands for
  const { place, house, tubes, headers, store } = checkStudyText(
    `${GOOD}  northWall: R-19
  kneeWall: RSI 2
  endWalls: Glazed
  edgeInsulation: r-10
tubes: {spacing: 1' 4", depth: 24 1/2 in, direction: Across}
headers: {layout: z, diameter: 10", manning: None}
store: {chargeStart: 9 degF, reverse: No}
`,
    "typed.yaml",
  );
  assertEquals(place.timeZone, -7);
  assertAlmostEquals(place.elevation, 4900 * 0.3048, 1e-9);
  assertAlmostEquals(house.length, 96 * 0.3048, 1e-9);
  assertAlmostEquals(house.northWall as number, 1 / (19 * 0.1761102), 1e-6);
  assertAlmostEquals(house.kneeWall, 0.5, 1e-12);
  assertEquals(house.endWalls, "glazed");
  assertAlmostEquals(house.edgeInsulation, 1.761102, 1e-6);
  assertAlmostEquals(tubes.spacing!, 16 * 0.0254, 1e-12);
  assertAlmostEquals(tubes.depth, 24.5 * 0.0254, 1e-12);
  assertEquals(tubes.direction, "across");
  assertEquals(headers.layout, "Z");
  assertAlmostEquals(headers.diameter!, 0.254, 1e-12);
  assertEquals(headers.manning, null);
  assertAlmostEquals(store.chargeStart, 5, 1e-12);
  assertEquals(store.reverse, false);
});

Deno.test("a temperature where the thermostat wants a difference is refused with what to write", () => {
  // Property: 80 degF is never read as 44 K
  for (const key of ["chargeStart", "chargeStop", "dischargeStart", "dischargeStop"]) {
    for (const text of ["80 degF", "20 degC", "5 °C"]) {
      const message = refusals(`${GOOD}store: {${key}: ${text}}\n`);
      assert(message.startsWith("typed.yaml:6:"), message);
      assert(message.includes(`"store.${key}" is a temperature difference`), message);
      assert(/ K\b/.test(message), message);
    }
  }
});

Deno.test("a time zone that means two things is refused with its line and the choices", () => {
  // Property: no guess
  const message = refusals(GOOD.replace("MST", "IST"));
  assert(message.startsWith("typed.yaml:1:"), message);
  assert(message.includes("UTC+5:30") && message.includes("UTC+2"), message);
});
