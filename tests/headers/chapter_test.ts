import {
  assert,
  assertAlmostEquals,
  assertEquals,
  assertGreater,
  assertLess,
  assertThrows,
} from "@std/assert";
import fc from "fast-check";
import { InputError } from "../../lib/basics/mod.ts";
import {
  FLANGED,
  fouledGroup,
  groupNetwork,
  headerDiameterFor,
  headerGroups,
  headersChapter,
  heatFactor,
  scatterWorkmanship,
  solveNetwork,
  splitGroups,
} from "../../lib/headers/mod.ts";
import { findTube, tubePositions } from "../../lib/tubes/mod.ts";
import { field, HEADERS, STATE } from "./fields.ts";
import { AIR } from "./closed_form_networks.ts";

Deno.test("headersChapter() gives shares with a mean of 1 for any field, layout and grouping", () => {
  // Property: conservation over groups
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 60 }),
      fc.integer({ min: 1, max: 3 }),
      fc.integer({ min: 1, max: 4 }),
      fc.constantFrom("Z", "U", "centre", "two-ended"),
      (count, layers, groups, layout) => {
        fc.pre(layers <= count && groups <= count);
        const tubes = field({ count, layers, airFlow: count * 0.0163 });
        const headers = {
          ...HEADERS,
          layout,
          groups,
          diameter: 0.5,
          returnDiameter: 0.45,
        } as const;
        const result = headersChapter(headers, tubes, STATE);
        const mean = result.shares.reduce((sum, share) => sum + share, 0) / count;
        assertAlmostEquals(mean, 1, 1e-9);
        assert(result.flowMin <= 1 + 1e-12 && result.flowMax >= 1 - 1e-12);
        assert(result.pressureDrop > 0.9 * tubes.pressureDrop);
      },
    ),
    { numRuns: 40 },
  );
});

Deno.test("headersChapter() starves the near tubes in a Z layout and evens out with larger headers", () => {
  // Property: static regain with little friction raises the pressure away from the feed
  const tubes = field();
  const sizes = [0.203, 0.254, 0.305, 0.457].map((diameter) =>
    headersChapter({ ...HEADERS, diameter, returnDiameter: diameter }, tubes, STATE)
  );
  const large = sizes[3]!;
  assertLess(large.shares[0]!, large.shares[15]!);
  for (let i = 1; i < sizes.length; i++) {
    assertLess(sizes[i]!.unevenness, sizes[i - 1]!.unevenness);
    assertLess(sizes[i]!.pressureDrop, sizes[i - 1]!.pressureDrop);
  }
  const reverse = headersChapter({ ...HEADERS, layout: "U" }, tubes, STATE);
  assertLess(reverse.unevenness, sizes[2]!.unevenness);
});

Deno.test("headersChapter() is more even with longer tubes", () => {
  // Property: the tubes' own loss outweighs the headers' pressure changes
  const shorter = headersChapter(HEADERS, field({ length: 8 }), STATE);
  const longer = headersChapter(HEADERS, field({ length: 22 }), STATE);
  assertLess(longer.unevenness, shorter.unevenness);
});

Deno.test("headersChapter() gives a rising system curve through the design point", () => {
  // Property: consistency of curve and design point
  const tubes = field();
  const result = headersChapter(HEADERS, tubes, STATE);
  const at = result.systemCurve.find(({ airFlow }) =>
    Math.abs(airFlow - tubes.flowPerTube * tubes.count) < 1e-12
  );
  assertAlmostEquals(at!.pressure, result.pressureDrop, 1e-9);
  for (let i = 1; i < result.systemCurve.length; i++) {
    assert(result.systemCurve[i]!.pressure > result.systemCurve[i - 1]!.pressure);
  }
});

Deno.test("a blocked tube carries nothing, its neighbours more", () => {
  // Property: conservation with a blocked tube
  const [first] = headerGroups(HEADERS, field(), STATE);
  const group = { ...first!.group, blocked: new Set([4]) };
  const open = solveNetwork(groupNetwork(first!.group), 0.26);
  const blocked = solveNetwork(groupNetwork(group), 0.26);
  assertEquals(blocked.flows[4], 0);
  assertAlmostEquals(blocked.flows.reduce((sum, flow) => sum + flow, 0), 0.26, 1e-12);
  [3, 5, 15].forEach((tube) => assert(blocked.flows[tube]! > open.flows[tube]!));
});

Deno.test("fouledGroup() starves a silted tube and shuts a flooded one", () => {
  // Property: more silt, less air; a full tube carries nothing
  const [first] = headerGroups(HEADERS, field(), STATE);
  const flowOf = (depth: number): Float64Array => {
    const fillings = new Map([[3, { depth, length: 4 }]]);
    return solveNetwork(groupNetwork(fouledGroup(first!.group, fillings, 0.26)), 0.26).flows;
  };
  const flows = [0, 0.03, 0.06, 0.102].map((depth) => flowOf(depth)[3]!);
  assert(flows[0]! > flows[1]! && flows[1]! > flows[2]! && flows[2]! > 0);
  assertEquals(flows[3], 0);
});

Deno.test("headersChapter() keeps a tapered Z field within bounds and reports reversed tubes", () => {
  // Property: taper changes the shares, and headers of tube size are named as too small
  const straight = headersChapter(HEADERS, field(), STATE);
  const tapered = headersChapter({ ...HEADERS, taper: 0.6 }, field(), STATE);
  assert(Math.abs(tapered.unevenness - straight.unevenness) > 0.005);
  const tiny = headersChapter(
    { ...HEADERS, diameter: 0.13, returnDiameter: 0.13 },
    field({ length: 5 }),
    STATE,
  );
  assert(tiny.flowMin < 0);
  assert(tiny.notices.some(({ text }) => text.includes("too small")));
});

Deno.test("protruding tube ends cost evenness and pressure against flush ones", () => {
  // Property: stubs narrow the header and sharp re-entrant inlets lose more
  const tubes = field();
  const flush = headersChapter(HEADERS, tubes, STATE);
  const deep = headersChapter({ ...HEADERS, inlet: "protruding", insertion: 0.08 }, tubes, STATE);
  const rounded = headersChapter({ ...HEADERS, inlet: "rounded" }, tubes, STATE);
  assert(deep.pressureDrop > flush.pressureDrop && flush.pressureDrop > rounded.pressureDrop);
  assert(deep.notices.some(({ text }) => text.includes("blocks")));
});

Deno.test("scatterWorkmanship() repeats for one seed, and has no spread for flanged connectors", () => {
  // Property: seeded trials; flanged ends are all alike
  const [first] = headerGroups({ ...HEADERS, layout: "U" }, field(), STATE);
  const careless = { insertionMin: 0, insertionMax: 0.1, burrShare: 0.5, burrLoss: 0.8 };
  const study = { workmanship: careless, trials: 60, seed: 7 };
  const once = scatterWorkmanship(first!.group, 0.26, study);
  assertEquals(once, scatterWorkmanship(first!.group, 0.26, study));
  assert(once.unevenness.high > once.unevenness.low);
  const flanged = scatterWorkmanship(first!.group, 0.26, { ...study, workmanship: FLANGED });
  assertAlmostEquals(flanged.unevenness.high, flanged.unevenness.low, 1e-12);
  assert(once.unevenness.mean > flanged.unevenness.mean);
  assert(once.pressureDrop.low > flanged.pressureDrop.high);
  assert(once.heatFactor.mean < flanged.heatFactor.mean);
  assertAlmostEquals(flanged.heatAtEqualPressure.mean, 1, 1e-12);
  assert(once.heatAtEqualPressure.high < once.heatAtEqualFlow.low && once.heatAtEqualFlow.high < 1);
});

Deno.test("headerDiameterFor() finds the smallest header that is even enough", () => {
  // Property: definition
  const [first] = headerGroups(HEADERS, field(), STATE);
  const found = headerDiameterFor(first!.group, 0.26, 0.05)!;
  assert(found.unevenness <= 0.05 && found.unevenness > 0.0495);
  const tight = headerDiameterFor(first!.group, 0.26, 0.01)!;
  assert(tight.diameter > found.diameter);
});

Deno.test("heatFactor() is 1 for an even share and less for an uneven one", () => {
  // Property: the heat of a tube is concave in its flow
  const tubes = { product: findTube("corrugated-4in"), length: 15, air: AIR };
  assertAlmostEquals(heatFactor([0.016, 0.016], tubes), 1, 1e-12);
  assertLess(heatFactor([0.008, 0.024], tubes), 1);
  assertLess(heatFactor([0.002, 0.03], tubes), heatFactor([0.008, 0.024], tubes));
  assertAlmostEquals(heatFactor([0, 0.032], { ...tubes, length: 500 }), 1, 1e-6);
});

Deno.test("heatFactor() passes 1 only where tubes lie on both sides of turbulence", () => {
  // Property: heat is concave in flow while the film is laminar (Nusselt 3.66) or turbulent
  // (Gnielinski), and convex between, where the film grows faster than the flow (Reynolds 2300 to 4000)
  const tubes = { product: findTube("corrugated-4in"), length: 15, air: AIR };
  const { insideDiameter } = tubes.product;
  const flowAt = (reynolds: number) =>
    reynolds * AIR.viscosity / AIR.density * Math.PI / 4 * insideDiameter;
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const within = (least: number, most: number) =>
    fc.array(share.map((at) => flowAt(least + at * (most - least))), {
      minLength: 2,
      maxLength: 9,
    });
  for (const [least, most] of [[50, 2299], [4001, 30_000]] as const) {
    fc.assert(fc.property(within(least, most), (flows) => heatFactor(flows, tubes) <= 1 + 1e-9));
  }
  assertGreater(heatFactor([flowAt(900), flowAt(3500)], tubes), 1.02);
});

Deno.test("splitGroups() keeps every tube once, layers together where the numbers allow", () => {
  // Property: a partition
  const layout = { count: 23, layers: 2, spacing: 0.4, layerSpacing: 0.3, depth: 0.6 };
  const positions = tubePositions(layout);
  for (const groups of [1, 2, 3, 4, 7]) {
    const split = splitGroups(positions, groups);
    const all = split.flat().sort((a, b) => a - b);
    assertEquals(all, positions.map((_, i) => i));
    for (const members of split) {
      for (let i = 1; i < members.length; i++) {
        assert(positions[members[i]!]!.x >= positions[members[i - 1]!]!.x);
      }
    }
  }
  const [upper, lower] = splitGroups(positions, 2);
  assert(upper!.every((tube) => positions[tube]!.depth === 0.6));
  assert(lower!.every((tube) => positions[tube]!.depth > 0.6));
});

Deno.test("headersChapter() refuses tube ends that find no room in the header", () => {
  // Property: bad input
  const deep = { ...HEADERS, inlet: "protruding", insertion: 0.5 } as const;
  assertThrows(() => headersChapter(deep, field(), STATE), InputError, "they would close it");
  const small = { ...HEADERS, returnDiameter: 0.1 };
  assertThrows(() => headersChapter(small, field(), STATE), InputError, "larger header");
  assertThrows(
    () => headersChapter({ ...HEADERS, junctions: "magic" }, field(), STATE),
    InputError,
    "tees, bernoulli, partial",
  );
});

Deno.test("headersChapter() gives the cross-section of all tubes of a header over the header's", () => {
  // Property: definition, 16 tubes of 102 mm on 305 mm; two groups have half the tubes each
  const ratio = (groups: number) =>
    headersChapter({ ...HEADERS, groups }, field(), STATE).areaRatio;
  const diameter = field().diameter;
  assertAlmostEquals(ratio(1), 16 * diameter ** 2 / 0.305 ** 2, 1e-9);
  assertAlmostEquals(ratio(2), 8 * diameter ** 2 / 0.305 ** 2, 1e-9);
});
