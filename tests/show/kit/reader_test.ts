import { assert, assertEquals, assertMatch } from "@std/assert";
import fc from "fast-check";
import {
  inReadersOrder,
  readIn,
  shown,
  shownBoth,
  shownNumber,
  shownRange,
} from "winterground/show/kit/reader.ts";
import { kindOfAxis, readersAxes } from "winterground/show/kit/readers_axes.ts";
import { forReport } from "winterground/show/kit/layout.ts";
import { numbers, table } from "winterground/show/kit/table.ts";
import { type Kind, KINDS, showBoth, showSi, showUs } from "winterground/units/mod.ts";

const ALL = Object.keys(KINDS) as Kind[];

/** Does something for a reader of US units; SI afterwards. */
function inUs<T>(work: () => T): T {
  readIn("US");
  try {
    return work();
  } finally {
    readIn("SI");
  }
}

const plain = (text: string) => text.replaceAll(/[\u00a0\u202f]/g, " ");

Deno.test("values of published tables stand in the reader's units (NIST SP 811, appendix B)", () => {
  // Source: [nist-sp811-2008], B.8: 1 ft = 0.3048 m, t/degF = 1.8 t/degC + 32, 1 ft3/min =
  // 4.719474E-04 m3/s, 1 inH2O (39.2 degF) = 249.08 Pa
  inUs(() => {
    assertEquals(plain(shown(0, "temperature")), "32.0 degF");
    assertEquals(plain(shown(-40, "temperature")), "−40.0 degF");
    assertEquals(plain(shown(10, "temperatureDifference")), "18.0 degF");
    assertEquals(plain(shown(30.48, "length")), "100.0 ft");
    assertEquals(plain(shown(0.4719474, "airFlow")), "1000 cfm");
    assertEquals(Number(shownNumber(249.08, "pressure")), 1);
    assertEquals(plain(shownBoth(100, "temperature")), "212.0 degF (100.0 degC)");
    assertEquals(
      plain(shownRange(0, 100, "temperature")),
      "32.0 to 212.0 degF (0.0 to 100.0 degC)",
    );
  });
  assertEquals(plain(shown(0, "temperature")), "0.0 degC");
  assertEquals(plain(shownBoth(100, "temperature")), "100.0 degC (212.0 degF)");
});

Deno.test("every kind stands in US units first, and in its one unit where it has none", () => {
  // Property: the same two texts in the other order, for any value
  fc.assert(
    fc.property(
      fc.constantFrom(...ALL),
      fc.double({ min: -1e5, max: 1e5, noNaN: true }),
      (kind, value) => {
        const [si, us] = [showSi(value, kind), showUs(value, kind)];
        const one = inUs(() => shown(value, kind));
        assertEquals(one, us === "" ? si : us);
        assertEquals(shown(value, kind), si);
        const both = showBoth(value, kind);
        const turned = inUs(() => inReadersOrder(both));
        assertEquals(turned, both === si ? si : `${us} (${si})`);
        assertEquals(inReadersOrder(both), both);
      },
    ),
  );
});

Deno.test("words around quantities stay as they are, and are turned once", () => {
  // Property: only pairs of an SI and a US quantity move
  fc.assert(fc.property(fc.string({ unit: "binary" }), (words) => {
    const alone = words.replaceAll(/[\d(]/g, "");
    assertEquals(inUs(() => inReadersOrder(alone)), alone);
    const sentence = `${alone}; falls to ${showBoth(-5, "temperature")}, ${alone}`;
    const turned = inUs(() => inReadersOrder(sentence));
    assert(turned.includes(`${showUs(-5, "temperature")} (${showSi(-5, "temperature")})`));
    assertEquals(inUs(() => inReadersOrder(turned)), turned);
  }));
});

Deno.test("an axis is in the reader's units: label, ends and what is drawn", () => {
  // Source: [nist-sp811-2008], B.8: t/degF = 1.8 t/degC + 32
  assertEquals(kindOfAxis("house air, degC")?.kind, "temperature");
  assertEquals(kindOfAxis("coldest hours of the year, h")?.kind ?? "hours", "hours");
  assertEquals(kindOfAxis("coldest first"), null);
  const y = { label: "house air, degC", domain: [-10, 40], ticks: [-10, 0, 40] };
  assertEquals(readersAxes({ y }), { y });
  const { y: turned } = inUs(() => readersAxes({ y }));
  assertEquals(turned?.label, "house air, degF");
  assertEquals(turned?.domain, [14, 104]);
  assertEquals((turned?.transform as (value: number) => number)(100), 212);
  assert(!("ticks" in turned!));
});

Deno.test("tables have the reader's units first in a notebook and alone in a report", () => {
  // Property: the order of the heads; the value that belongs to each
  const rows = [{ reach: 3.048 }];
  const draw = () => table(rows, [{ head: "reach", value: (row) => row.reach, kind: "length" }]);
  const heads = (html: string) => [...html.matchAll(/<th [^>]*>([^<]*)</g)].map(([, text]) => text);
  assertEquals(heads(draw()["text/html"]), ["reach, m", "reach, ft"]);
  assertEquals(heads(inUs(draw)["text/html"]), ["reach, ft", "reach, m"]);
  assertEquals(heads(forReport(draw)["text/html"]), ["reach, m"]);
  assertEquals(heads(inUs(() => forReport(draw))["text/html"]), ["reach, ft"]);
  const list = () => numbers([{ label: "reach", value: 3.048, kind: "length" }]);
  assertMatch(plain(inUs(list)["text/plain"]), /10\.0 ft\s+3\.0 m/);
  assertMatch(plain(inUs(() => forReport(list))["text/plain"]), /10\.0 ft$/);
});

Deno.test("pairs of values turn in words, in pictures and behind a minus sign, and nothing else does", () => {
  // Property: the same two texts in the other order
  const turned = [
    ["2.5\u00a0degC (36.5\u00a0degF)", "36.5\u00a0degF (2.5\u00a0degC)"],
    ["0 to 25&#160;mm (0.0 to 1.0&#160;in) in", "0.0 to 1.0&#160;in (0 to 25&#160;mm) in"],
    ["from -10 degC (14.0 degF) on", "from 14.0 degF (-10 degC) on"],
  ] as const;
  inUs(() => {
    for (const [text, wanted] of turned) assertEquals(inReadersOrder(text), wanted);
    for (const text of ["11-12 m (39 ft)", "4 m (see 3 ft)", "6 m"]) {
      assertEquals(inReadersOrder(text), text);
    }
  });
  for (const [text] of turned) assertEquals(inReadersOrder(text), text);
});
