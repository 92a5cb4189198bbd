// Property: the rule of docs/worth.md, at its borders
import { assertEquals } from "@std/assert";
import { designFaults, giveVerdict, type VerdictFacts } from "winterground/worth/mod.ts";

const PAYS: VerdictFacts = {
  faults: [],
  savedHeat: 3000,
  netSavings: 0,
  costOfHeat: 0.1,
  heatPrice: 0.2,
  missing: [],
  measures: [],
};
const verdict = (facts: Partial<VerdictFacts>) => giveVerdict({ ...PAYS, ...facts });

Deno.test("a store that just pays is dug; one that just does not is not", () => {
  assertEquals(verdict({}), { word: "dig", reason: "pays", first: [] });
  assertEquals(verdict({ netSavings: -1e-9 }).reason, "a heater alone costs less");
});

Deno.test("a store that saves no heat is refused before anything else is asked", () => {
  const facts = { savedHeat: 0, faults: ["a fault"], netSavings: null, missing: ["fuel"] };
  assertEquals(verdict(facts), { word: "no", reason: "saves no heat", first: [] });
  assertEquals(verdict({ savedHeat: 1e-9 }).word, "dig");
});

Deno.test("faults are mended before money is asked", () => {
  const facts = { faults: ["the fan stalls"], netSavings: null, missing: ["fuel"] };
  assertEquals(verdict(facts), { word: "not yet", reason: "faults", first: ["the fan stalls"] });
});

Deno.test("a missing price leaves the verdict open and is named", () => {
  const facts = { netSavings: null, costOfHeat: null, missing: ["electricity"] };
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
  assertEquals(verdict({ measures: [measure(null), measure(0.01, 0)] }).word, "dig");
});

Deno.test("a measure that costs more than heating is not named, not even beside a no", () => {
  const measures = [{ name: "glazing", saved: 900, costOfHeat: 0.21 }];
  assertEquals(verdict({ measures, costOfHeat: 0.4, netSavings: -1 }).first, []);
  assertEquals(verdict({ measures, costOfHeat: 0.4, netSavings: -1, heatPrice: 0.22 }).first, [
    "glazing",
  ]);
});

Deno.test("measures are named cheapest first, with a no as well", () => {
  const measures = [
    { name: "curtain", saved: 900, costOfHeat: 0.08 },
    { name: "sealing", saved: 500, costOfHeat: 0.02 },
  ];
  assertEquals(verdict({ measures }).first, ["sealing", "curtain"]);
  assertEquals(verdict({ measures, netSavings: -1 }), {
    word: "no",
    reason: "a heater alone costs less",
    first: ["sealing", "curtain"],
  });
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
