// Property: the rule of docs/worth.md, at its borders
import { assertEquals } from "@std/assert";
import { designFaults, giveVerdict, nextStep, type VerdictFacts } from "winterground/worth/mod.ts";

const PAYS: VerdictFacts = {
  faults: [],
  savedHeat: 3000,
  costOfHeat: 0.1,
  heatWorth: 0.2,
  missing: [],
  measures: [],
};
const verdict = (facts: Partial<VerdictFacts>) => giveVerdict({ ...PAYS, ...facts });

Deno.test("a store that saves a kilowatt-hour for less than heating is dug; for as much it is not", () => {
  assertEquals(verdict({ costOfHeat: 0.1999 }), { word: "dig", reason: "pays", first: [] });
  assertEquals(verdict({ costOfHeat: 0.2 }).reason, "a heater alone costs less");
});

Deno.test("a store that saves no heat is refused before anything else is asked", () => {
  const facts = { savedHeat: 0, faults: ["a fault"], costOfHeat: null, missing: ["fuel"] };
  assertEquals(verdict(facts), { word: "no", reason: "saves no heat", first: [] });
  assertEquals(verdict({ savedHeat: 1e-9 }).word, "dig");
});

Deno.test("faults are mended before money is asked", () => {
  const facts = { faults: ["the fan stalls"], costOfHeat: null, missing: ["fuel"] };
  assertEquals(verdict(facts), { word: "not yet", reason: "faults", first: ["the fan stalls"] });
});

Deno.test("a missing price leaves the verdict open and is named", () => {
  const facts = { costOfHeat: null, missing: ["electricity"] };
  assertEquals(verdict(facts), {
    word: "not yet",
    reason: "prices missing",
    first: ["electricity"],
  });
});

Deno.test("a measure comes first where it saves a kilowatt-hour for less, and not where it costs the same", () => {
  const measure = (costOfHeat: number | null, saved = 100) => ({
    name: "sealing",
    saved,
    costOfHeat,
  });
  assertEquals(verdict({ measures: [measure(0.1)] }).word, "dig");
  assertEquals(verdict({ measures: [measure(0.0999)] }), {
    word: "not yet",
    reason: "another measure comes first",
    first: ["sealing"],
  });
  assertEquals(verdict({ measures: [measure(null)] }).word, "dig");
});

Deno.test("a measure that costs as much as heating is not named, not even beside a no", () => {
  const measures = [{ name: "glazing", saved: 900, costOfHeat: 0.2 }];
  assertEquals(verdict({ measures, costOfHeat: 0.4 }).first, []);
  assertEquals(verdict({ measures, costOfHeat: 0.4, heatWorth: 0.21 }).first, ["glazing"]);
});

Deno.test("one measure is named, the first step of the ladder, with a no as well", () => {
  const measures = [
    { name: "curtain", saved: 900, costOfHeat: 0.08 },
    { name: "sealing", saved: 500, costOfHeat: 0.02 },
  ];
  assertEquals(verdict({ measures }).first, ["sealing"]);
  assertEquals(nextStep(measures, 0.2)!.name, "sealing");
  assertEquals(verdict({ measures, costOfHeat: 0.2 }), {
    word: "no",
    reason: "a heater alone costs less",
    first: ["sealing"],
  });
});

Deno.test("the next step is the cheapest that pays, the first of equals, or none", () => {
  const steps = [null, 0.3, 0.1, 0.1, 0.2].map((costOfHeat, place) => ({ costOfHeat, place }));
  assertEquals(nextStep(steps, 0.15)!.place, 2);
  assertEquals(nextStep(steps, 0.1), null);
  assertEquals(nextStep([], 1), null);
});

const SOUND = {
  flowMin: 0.8,
  flowRatio: 0.9,
  stalled: false,
  footingRoom: 0,
  pitDepth: 1.4,
  waterTableDepth: null,
};
const faults = (facts: Partial<typeof SOUND> | Record<string, unknown>) =>
  designFaults({ ...SOUND, ...facts });

Deno.test("a design at every limit has no fault; one beyond each has one", () => {
  assertEquals(faults({}), []);
  assertEquals(faults({ waterTableDepth: 1.41 }), []);
  for (
    const [facts, words] of [
      [{ flowMin: 0.799 }, "poorest tube"],
      [{ flowRatio: 0.899 }, "of the design flow"],
      [{ stalled: true }, "stalls"],
      [{ footingRoom: -0.001 }, "45° line"],
      [{ footingRoom: null }, "footing is unknown"],
      [{ waterTableDepth: 1.4 }, "water table"],
    ] as const
  ) {
    const found = faults(facts);
    assertEquals(found.length, 1);
    assertEquals(found[0]!.includes(words), true, found[0]);
  }
});
