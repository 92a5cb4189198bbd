import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import Papa from "papaparse";
import { type ResultTable, resultTable, seriesColumns } from "winterground/basics/mod.ts";
import { resultTables, startRun, tableCsv, writeTables } from "winterground/study/mod.ts";
import { fewComparisons } from "../../harness/few_comparisons.ts";
import { openSmallStudy } from "../../harness/small_study.ts";

Deno.test("resultTable() puts the unit into each head, and series side by side", () => {
  // Property: form
  const table = resultTable("a-b", [{ name: "x", heat: 1 }, { name: "y", heat: 2 }], [
    ["part", "", (row) => row.name],
    ["heat", "kWh", (row) => row.heat],
    ...seriesColumns<{ heat: number }>(["Jan", "Feb"], "K", (row, column) => row.heat * column),
  ]);
  assertEquals(table.heads, ["part", "heat (kWh)", "Jan (K)", "Feb (K)"]);
  assertEquals(table.rows, [["x", 1, 0, 1], ["y", 2, 0, 2]]);
});

Deno.test("tableCsv() leaves empty what does not apply and quotes what needs it", () => {
  // Property: reads back as it was; six digits
  const table: ResultTable = {
    name: "a",
    heads: ["way", "heat (kWh)", "settled"],
    rows: [["heat, all of it", 1234.5678, true], ["", null, false], ["none", Infinity, false]],
  };
  const rows = Papa.parse<string[]>(tableCsv(table).trim()).data;
  assertEquals(rows[1], ["heat, all of it", "1234.57", "yes"]);
  assertEquals(rows[2], ["", "", "no"]);
  assertEquals(rows[3]![1], "");
});

Deno.test("a run's tables are complete, each with units, and agree with its figures", async (test) => {
  // Property: one file a table; the same numbers as results.json
  const folder = await Deno.makeTempDir();
  try {
    const run = startRun(await openSmallStudy(), {
      cacheFolder: `${folder}/cache`,
      computations: fewComparisons(),
    });
    const tables = await resultTables(run);
    const figures = await run.figures();
    const find = (name: string) => {
      const table = tables.find((one) => one.name === name);
      assert(table !== undefined, name);
      return (head: string) => {
        const column = table.heads.findIndex((one) => one.startsWith(head));
        assert(column >= 0, `${name}: ${head} of ${table.heads.join(", ")}`);
        return table.rows.map((row) => row[column]);
      };
    };
    const sum = (cells: readonly unknown[]) =>
      cells.reduce<number>((all, one) => all + Number(one), 0);
    const near = (found: unknown, key: string) => {
      const value = Number(figures[key]!.value);
      assertAlmostEquals(Number(found), value, 1e-6 * Math.abs(value) + 1e-9);
    };

    await test.step("names are files of their own, rows are as long as heads", () => {
      assert(tables.length > 40, `${tables.length}`);
      assertEquals(new Set(tables.map(({ name }) => name)).size, tables.length);
      for (const { name, heads, rows } of tables) {
        assert(
          /^(climate|soil|house|tubes|headers|fan|store|worth|measured)-[a-z-]+$/.test(name),
          name,
        );
        assertEquals(new Set(heads).size, heads.length, name);
        for (const row of rows) assertEquals(row.length, heads.length, name);
      }
    });

    await test.step("a head without a unit stands over names, dates, months and numbers of things", () => {
      const countable = /month|day|tube|layer|year|number|settled|part|^\w+$|of$|by$|point|kind/;
      for (const { name, heads, rows } of tables) {
        heads.forEach((head, column) => {
          if (head.endsWith(")")) return;
          const cells = rows.map((row) => row[column]).filter((cell) => typeof cell === "number");
          const whole = cells.every((cell) => Number.isInteger(cell));
          assert(whole && (cells.length === 0 || countable.test(head)), `${name}: ${head}`);
        });
      }
    });

    await test.step("sums and extremes are the figures", () => {
      near(sum(find("climate-months")("global")), "climate.globalRadiation");
      near(Math.min(...find("climate-months")("lowest").map(Number)), "climate.coldestHour");
      near(sum(find("house-losses")("loss at night")), "house.lossCoefficient");
      near(sum(find("store-heat-by-month")("back-up heat, fan always off")), "house.heatDemand");
      near(sum(find("store-heat-by-month")("back-up heat with the store")), "store.backupHeat");
      const freezing = find("store-hours-below")("limit").indexOf(0);
      near(find("store-hours-below")("with the store")[freezing], "store.hoursBelowFreezing");
      const quarters = find("store-quarters");
      const origins = ["charged in Jan", "charged in Apr", "charged in Jul", "charged in Oct"];
      near(sum([...origins, "ground"].map((head) => sum(quarters(head)))), "store.heatOut");
      near(sum(find("store-fate-of-heat")("charged (kWh)")), "store.heatIn");
      const fans = find("store-fan-by-month");
      const fan = sum(fans("fan while charging")) + sum(fans("fan while discharging"));
      near(fan, "fan.energyPerYear");
    });

    await test.step("every table is written once, readable, in its own file", async () => {
      await writeTables(run, folder);
      const files = [...Deno.readDirSync(`${folder}/tables`)].map((entry) => entry.name).sort();
      assertEquals(files, tables.map(({ name }) => `${name}.csv`).sort());
      for (const { name, heads, rows } of tables) {
        const text = await Deno.readTextFile(`${folder}/tables/${name}.csv`);
        const parsed = Papa.parse<string[]>(text.trim());
        assertEquals(parsed.errors, [], name);
        assertEquals(parsed.data[0], [...heads], name);
        assertEquals(parsed.data.length, rows.length + 1, name);
      }
    });
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});
