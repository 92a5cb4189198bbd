import { assert, assertEquals } from "@std/assert";
import fc from "fast-check";
import { type LinkFrame, linkOf, readLink } from "winterground/live/page/link.ts";
import type { Changes, Slider } from "winterground/live/types.ts";

const SLIDERS: readonly Slider[] = [
  {
    name: "length",
    label: "Length of the tubes",
    kind: "length",
    value: 21.9456,
    least: 11,
    most: 43.5,
    step: 0.5,
  },
  {
    name: "count",
    label: "Number of tubes",
    kind: "count",
    value: 36,
    least: 18,
    most: 72,
    step: 1,
  },
  {
    name: "setPoint",
    label: "Heating set point",
    kind: "temperature",
    value: 2,
    least: -5,
    most: 22,
    step: 0.5,
  },
];
const FRAME: LinkFrame = { sliders: SLIDERS, units: "SI", mark: "ab12-cd34" };

Deno.test("what a link says is what was set", () => {
  // Property: written and read again, any of the sliders moved
  const moved = fc.record({
    length: fc.double({ min: 11, max: 43.5, noNaN: true }),
    count: fc.integer({ min: 18, max: 72 }),
    setPoint: fc.double({ min: -5, max: 22, noNaN: true }),
  }, { requiredKeys: [] });
  fc.assert(fc.property(moved, fc.constantFrom("SI" as const, "US" as const), (set, units) => {
    const changes: Changes = Object.fromEntries(
      Object.entries(set).map(([name, value]) => [name, value + 0]),
    );
    const read = readLink(linkOf({ changes, units }, FRAME), FRAME);
    assertEquals(read, { changes, units, faults: [] });
  }));
});

Deno.test("a page as it is has an empty link", () => {
  // Property: nothing set, nothing said
  assertEquals(linkOf({ changes: {}, units: "SI" }, FRAME), "");
  assertEquals(readLink("", FRAME), { changes: {}, units: "SI", faults: [] });
});

Deno.test("a link that makes no sense is said, and moves nothing", () => {
  // Property: out of range, no number, half a tube, another name, another study
  for (
    const link of [
      "length=abc",
      "length=",
      "length=1e9",
      "length=NaN",
      "length=0x12",
      "length=Infinity",
      "count=24.5",
      "count=-24",
      "setPoint=999",
      "door=1",
      "units=metric",
      "__proto__=1",
    ]
  ) {
    const { changes, units, faults } = readLink(link, FRAME);
    assertEquals([changes, units, faults.length], [{}, "SI", 1], link);
  }
  const other = readLink("length=18&study=0000-0000", FRAME);
  assertEquals(other.changes, { length: 18 });
  assert(/another study/.test(other.faults[0]!));
  fc.assert(fc.property(fc.string(), (text) => {
    for (const [name, value] of Object.entries(readLink(text, FRAME).changes)) {
      const { least, most } = SLIDERS.find((slider) => slider.name === name)!;
      assert(value >= least && value <= most);
    }
  }));
});
