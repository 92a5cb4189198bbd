// Property: a variant differs from its study in the changed keys alone.
import { assertEquals, assertThrows } from "@std/assert";
import { parse } from "yaml";
import { InputError } from "winterground/basics/mod.ts";
import { studyKey } from "winterground/study/file/schema.ts";
import { defaultStudyPath } from "winterground/study/mod.ts";
import { type SweptKey, type SweptValue, variantText } from "winterground/study/sweep/mod.ts";

function changed(text: string, values: Readonly<Record<string, SweptValue>>): string {
  const keys = Object.keys(values).map((key): SweptKey => ({
    key,
    path: studyKey(key)!.path,
    kind: null,
    axis: { form: "list", values: [] },
  }));
  return variantText(text, keys, Object.values(values));
}

Deno.test("variantText() changes values, adds keys and sections, and leaves the rest as it is", async () => {
  const text = await Deno.readTextFile(defaultStudyPath());
  const before = parse(text);
  const after = parse(changed(text, {
    "soil.moisture": "30 %",
    "house.curtain.coverage": "70 %",
    "tubes.extraLosses": 2,
    "place.horizon": [{ azimuth: "90 deg", elevation: "3 deg" }],
  }));
  assertEquals(after, {
    ...before,
    soil: { ...before.soil, moisture: "30 %" },
    house: { ...before.house, curtain: { ...before.house.curtain, coverage: "70 %" } },
    tubes: { ...before.tubes, extraLosses: 2 },
    place: { ...before.place, horizon: [{ azimuth: "90 deg", elevation: "3 deg" }] },
  });
  const bare = parse(changed("place: {latitude: 49 deg}\n", { "soil.moisture": "30 %" }));
  assertEquals(bare, { place: { latitude: "49 deg" }, soil: { moisture: "30 %" } });
});

Deno.test("variantText() changes an entry of a list, and refuses one that is not there", () => {
  const text =
    "soil:\n  layers:\n    - {thickness: 1 m, texture: loam}\n    - {thickness: 2 m, texture: clay}\n";
  assertEquals(parse(changed(text, { "soil.layers.2.thickness": "3 m" })).soil.layers, [
    { thickness: "1 m", texture: "loam" },
    { thickness: "3 m", texture: "clay" },
  ]);
  const cases: readonly [string, string, string][] = [
    [text, "soil.layers.3.thickness", '"soil.layers" is too short'],
    ["soil: {layers: none}", "soil.layers.1.thickness", '"soil.layers" is too short'],
    ["soil: {}", "soil.layers.1.thickness", '"soil.layers" is not there'],
    ["house: {curtain: none}", "house.curtain.coverage", '"house.curtain" is none'],
  ];
  for (const [given, key, words] of cases) {
    assertThrows(() => changed(given, { [key]: "1 m" }), InputError, words);
  }
});
