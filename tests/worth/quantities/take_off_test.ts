import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import Papa from "papaparse";
import { quantitiesCsv, quantityTakeOff } from "winterground/worth/mod.ts";
import { exampleTakeOff } from "./example.ts";

Deno.test("quantityTakeOff() agrees with hand arithmetic", () => {
  // Property: 24 tubes of 20 m, 5 % waste; pit from the outer tubes, margin and bedding.
  const rows = new Map(quantityTakeOff(exampleTakeOff()).map((row) => [row.item, row]));
  const tube = rows.get("tube, corrugated drain tube 100")!;
  assertAlmostEquals(tube.amount, 480, 1e-9);
  assertAlmostEquals(tube.order, 504, 1e-9);
  const width = 2 * (11 * 0.45 / 2 + 0.059 + 0.3);
  const length = 20 + 2 * (0.381 / 2 + 0.6);
  const spread = (0.381 + 0.015 - 0.4) / 2;
  const depth = 1 + Math.max(0, spread) + 0.381 / 2 + 0.1;
  assertAlmostEquals(rows.get("excavation")!.amount, width * length * depth, 1e-9);
  assertAlmostEquals(rows.get("excavation")!.order, 1.25 * width * length * depth, 1e-9);
  assertEquals(rows.get("holes in headers")!.amount, 48);
  const bedding = width * length * 0.1;
  assertAlmostEquals(rows.get("bedding")!.amount, bedding, 1e-9);
  // supply and return header of each of two groups: 12 tubes, 0.45 m apart, a hole's width at each end
  const headers = 2 * (11 * 0.45 + 2 * 0.121);
  assertAlmostEquals(rows.get("supply header pipe")!.amount, headers, 1e-9);
  assertAlmostEquals(rows.get("return header pipe")!.amount, headers, 1e-9);
  const displaced = 480 * Math.PI * 0.118 ** 2 / 4 + 2 * headers * Math.PI * 0.381 ** 2 / 4;
  const backfill = rows.get("backfill in lifts")!;
  assertAlmostEquals(backfill.amount, width * length * depth - bedding - displaced, 1e-9);
  assertAlmostEquals(backfill.order, 1.25 * backfill.amount, 1e-9);
  // 2·(24 + 8) m of board 1 m high; risers from 0.4 m below the ridge at 4.2 m and from 0.4 m above the
  // floor down to the middle of the layers at 0.8 m, two of each
  const board = rows.get("edge insulation, 2.00\u00a0m² K/W (11.4\u00a0h ft² degF/Btu)")!;
  assertAlmostEquals(board.amount, 64, 1e-9);
  assertAlmostEquals(board.order, 70.4, 1e-9);
  assertAlmostEquals(rows.get("riser pipe")!.amount, 2 * (3.8 + 0.8) + 2 * (0.4 + 0.8), 1e-9);
  assertEquals(rows.get("tube-to-header connectors")!.amount, 48);
  const csv = quantitiesCsv([...rows.values()]);
  assertEquals(csv.split("\n")[0], "item,net amount,to order,unit,basis");
  assertEquals(csv.trim().split("\n").length, rows.size + 1);
});

Deno.test("quantitiesCsv() has feet, square feet and cubic yards first for a reader of US units", () => {
  // Source: [nist-sp811-2008] B.8: 1 ft = 0.3048 m, 1 ft² = 0.09290304 m², 1 yd³ = 0.7645549 m³
  const SIZES: Readonly<Record<string, number>> = {
    ft: 0.3048,
    "ft²": 0.09290304,
    "yd³": 0.7645549,
  };
  const rows = quantityTakeOff(exampleTakeOff());
  const csv = Papa.parse<Record<string, string>>(quantitiesCsv(rows, "US").trim(), {
    header: true,
  });
  assertEquals(csv.meta.fields, [
    ...["item", "net amount, US", "to order, US", "unit, US"],
    ...["net amount", "to order", "unit", "basis"],
  ]);
  const seen = new Set<string>();
  for (const row of csv.data) {
    const unit = row["unit, US"]!.split(" ")[0]!;
    const size = SIZES[unit];
    if (size !== undefined) seen.add(unit);
    const rounding = 0.005 * (1 + 1 / (size ?? 1)); // both stand to a hundredth
    for (const name of ["net amount", "to order"]) {
      const wanted = Number(row[name]) / (size ?? 1);
      assertAlmostEquals(Number(row[`${name}, US`]), wanted, rounding + 1e-6 * wanted, row["item"]);
    }
    assert(!/\d\s(?:m|mm|m³) \(/.test(row["basis"]!), row["basis"]);
  }
  assertEquals([...seen].sort(), Object.keys(SIZES).sort());
});

Deno.test("quantityTakeOff() counts one riser for each fan and each outlet", () => {
  // Property: hand arithmetic: 2 groups, layout U: 2 outlets; 3 fans: 3 intakes; layers at 0.6 and 1 m
  const inputs = exampleTakeOff({ fans: 3 });
  const rows = new Map(quantityTakeOff(inputs).map((row) => [row.item, row]));
  assertAlmostEquals(
    rows.get("riser pipe")!.amount,
    3 * (4.2 - 0.4 + 0.8) + 2 * (0.4 + 0.8),
    1e-9,
  );
  assertEquals(rows.get("riser-to-header tees or sweeps")!.amount, 5);
  assertAlmostEquals(rows.get("rodent mesh")!.amount, 5 * Math.PI * 0.4 ** 2 / 4, 1e-9);
  assertAlmostEquals(
    rows.get("edge insulation, 2.00\u00a0m² K/W (11.4\u00a0h ft² degF/Btu)")!.amount,
    64,
    1e-9,
  );
});

Deno.test("quantityTakeOff() digs out as much as it lays and puts back", () => {
  // Property: pit = bedding + tubes + headers + backfill
  const inputs = exampleTakeOff();
  const rows = new Map(quantityTakeOff(inputs).map((row) => [row.item, row.amount]));
  const tubes = 480 * Math.PI * 0.059 ** 2;
  const headers = 2 * 2 * (11 * 0.45 + 2 * 0.121) * Math.PI * 0.381 ** 2 / 4;
  assertAlmostEquals(
    rows.get("excavation")!,
    rows.get("bedding")! + tubes + headers + rows.get("backfill in lifts")!,
    1e-9,
  );
});

Deno.test("quantityTakeOff() orders whole coils where tube is sold in coils", () => {
  // Property: 24 tubes of 20 m from coils of 75 m: 3 a coil, 8 coils
  const rows = quantityTakeOff(exampleTakeOff({}, { coilLength: 75 }));
  const tube = rows.find(({ id }) => id === "tube:corrugated 100")!;
  assertEquals([tube.amount, tube.order], [480, 600]);
});

Deno.test("quantityTakeOff() fills a gravel bed round the tubes", () => {
  // Property: hand arithmetic: 11·0.45 m and 0.4 m between tube centres, 0.15 m of gravel beyond, 20 m long
  const rows = quantityTakeOff(exampleTakeOff({}, { gravelMargin: 0.15 }));
  const gravel = rows.find(({ id }) => id === "gravel")!;
  const bed = (11 * 0.45 + 0.3) * (0.4 + 0.3) * 20;
  assertAlmostEquals(gravel.amount, bed - 480 * Math.PI * 0.059 ** 2, 1e-9);
  assertAlmostEquals(gravel.order, 1.1 * gravel.amount, 1e-9);
});

Deno.test("quantityTakeOff() counts hours by hand from what is laid", () => {
  // Property: hand arithmetic with the allowances of data/drawings/allowances.csv
  const rows = quantityTakeOff(exampleTakeOff());
  const amount = (id: string) => rows.find((row) => row.id === id)!.amount;
  const hours = 0.04 * 480 + 0.25 * 48 + 0.5 * amount("riser-pipe") + 0.35 * amount("backfill") +
    3 * (1 + amount("drain") + 1);
  assertAlmostEquals(amount("labour"), hours, 1e-9);
});

Deno.test("quantityTakeOff() lists fan, guards, drain, alarm, electrician and permits once each way", () => {
  // Property: one of each fan piece for each fan, one drain for each low header
  const rows = new Map(
    quantityTakeOff(exampleTakeOff({ fans: 3 })).map(({ id, order }) => [id, order]),
  );
  for (const id of ["fan:test-fan", "fan-guard", "isolator", "flap"]) assertEquals(rows.get(id), 3);
  for (const id of ["thermostat", "electrician", "sump", "frost-alarm", "permit"]) {
    assertEquals(rows.get(id), 1);
  }
  assertEquals(rows.get("drain"), 2);
});
