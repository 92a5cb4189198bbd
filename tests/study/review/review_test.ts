import { assert, assertAlmostEquals, assertEquals, assertStringIncludes } from "@std/assert";
import { reviewTable, savedDoubtTable } from "winterground/show/study/review.ts";
import { reviewStudy } from "winterground/study/mod.ts";
import { resolution, storeResult } from "../../show/store/sample.ts";

const quarter = { putIn: 1, givenBack: 1, sameQuarter: 1, throughFloor: 0, lost: 0, remaining: 10 };
const store = {
  ...storeResult,
  balanceResidual: 1e-13,
  savedHeat: 3000,
  heatIn: 12000,
  tagged: [quarter],
};
const good = {
  climate: { layout: "TMY3", notices: [] },
  soil: { measuredConductivity: 1.2, waterTableDepth: 4 },
  worth: { doubtHeatSaved: 0.3 },
  defaults: [{}, {}],
};
const found = {
  climate: { notices: [] },
  store,
  resolution,
  worth: { designFaults: [] },
  notices: [],
};
const warning = { level: "warning", chapter: "climate", text: "odd" } as const;

const failing = (study: typeof good, results: Parameters<typeof reviewStudy>[1]) =>
  reviewStudy(study, results).checks.filter(({ passes }) => passes === false)
    .map(({ question }) => question);

Deno.test("reviewStudy() finds nothing where all is well, and leaves the defaults to the reviewer", () => {
  // Property: a made-up study without faults
  assertEquals(failing(good, found), []);
  const judged = reviewStudy(good, found).checks.filter(({ passes }) => passes === null);
  assertEquals(judged.map(({ found }) => found), ["2 defaults, listed below"]);
});

Deno.test("reviewStudy() fails each check by what it asks for, and no other", () => {
  // Property: one thing wrong at a time
  const moved = (part: Partial<typeof resolution.largest>) => ({
    ...found,
    resolution: { ...resolution, largest: { ...resolution.largest, ...part } },
  });
  const cases: readonly (readonly [typeof good, Parameters<typeof reviewStudy>[1], RegExp])[] = [
    [good, { ...found, store: { ...store, balanceResidual: -1e-6 } }, /ledger/],
    [good, { ...found, store: { ...store, tagged: [{ ...quarter, remaining: -90 }] } }, /repeat/],
    [good, moved({ savedHeat: 200 }), /cells, steps/],
    [good, moved({ coldestHourNoFan: 0.5 }), /coldest hour/],
    [good, {
      ...found,
      resolution: { ...resolution, together: { ...resolution.together, savedHeat: 3001 } },
    }, /more than all/],
    [{ ...good, climate: { layout: "normals", notices: [] } }, found, /measured year/],
    [good, { ...found, climate: { notices: [warning] } }, /sound/],
    [
      { ...good, soil: { ...good.soil, measuredConductivity: null as never } },
      found,
      /conductivity/,
    ],
    [{ ...good, soil: { ...good.soil, waterTableDepth: null as never } }, found, /water table/],
    [good, { ...found, worth: { designFaults: ["too near"] } }, /design/],
  ];
  for (const [study, results, question] of cases) {
    const [first, ...others] = failing(study, results);
    assert(first !== undefined && question.test(first), `${question}: ${first}`);
    assertEquals(others, [], String(question));
  }
  // a study that saves nothing passes neither the movement nor the size of its saving
  assertEquals(failing(good, { ...found, store: { ...store, savedHeat: 0 } }).length, 2);
});

Deno.test("the parts of the doubt in the heat saved add by their squares", () => {
  // Property: root of the sum of squares; movements of 0, 5, 10, 15 kWh and 0.3 of 3000 kWh
  const { saved } = reviewStudy(good, found);
  assertEquals(saved.parts.map(({ half }) => half), [0, 5, 10, 15, 900]);
  assertAlmostEquals(saved.together, Math.sqrt(25 + 100 + 225 + 810000), 1e-9);
  assertStringIncludes(savedDoubtTable(saved)["text/plain"]!, "± all of these together");
  const text = reviewTable(reviewStudy(good, { ...found, worth: { designFaults: ["too near"] } }));
  assertStringIncludes(text["text/plain"]!, "NO");
});
