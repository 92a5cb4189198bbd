import { assert, assertEquals } from "@std/assert";
import Papa from "papaparse";
import { FIELDS } from "winterground/study/fields.ts";
import { type Figure, resultsOf, startRun, writeResults } from "winterground/study/mod.ts";
import { openSmallStudy } from "../harness/small_study.ts";

/** Keys results.json must hold for the chapters up to the store. */
const KEYS = `climate.meanTemperature climate.coldestHour climate.design99_6
climate.heatingDegreeDays18 climate.globalRadiation soil.meanTemperature soil.surfaceAmplitude
soil.diffusivity soil.conductivity soil.frostDepth soil.temperatureAtTubeDepthMin
soil.temperatureAtTubeDepthMax house.floorArea house.lossCoefficient house.peakHeatLoss
house.heatDemand house.coldestHourNoStore house.hoursBelowFreezingNoStore house.firstFreezeNoStore
tubes.count tubes.length tubes.totalLength tubes.diameter tubes.airSpeed tubes.flowPerTube
tubes.pressureDrop tubes.effectiveness headers.diameter headers.areaRatio headers.flowMin
headers.flowMax headers.unevenness fan.airFlow fan.pressure fan.power fan.energyPerYear
fan.specificPower store.heatIn store.heatOut store.latentIn store.recovery store.cop
store.carriedAcrossSeasons store.coldestHour store.hoursBelowFreezing store.firstFreeze
store.backupHeat store.balanceResidual`.split(/\s+/);

Deno.test("a run computes each chapter once, keeps it on disk, and writes figures and hours that agree", async (test) => {
  // Property: notebooks, results.json and hourly.csv come from the same results
  const folder = await Deno.makeTempDir();
  try {
    const study = await openSmallStudy();
    const run = startRun(study, { cacheFolder: `${folder}/cache` });
    const figures = await run.figures();

    await test.step("every key is there with value, unit and label", () => {
      for (const key of KEYS) {
        const figure: Figure | undefined = figures[key];
        assert(figure !== undefined, key);
        assert(figure.unit !== "" && figure.label !== "", key);
        if (figure.unit === "date") {
          assert(figure.value === null || /^\d{4}-\d\d-\d\d$/.test(String(figure.value)), key);
        } else assert(Number.isFinite(figure.value), key);
      }
    });

    await test.step("one result is one object however often it is asked for", async () => {
      assert(await run.store() === await run.store());
    });

    await test.step("a second run takes everything from disk, bit for bit", async () => {
      const start = performance.now();
      const again = startRun(await openSmallStudy(), { cacheFolder: `${folder}/cache` });
      assertEquals(await again.figures(), figures);
      assertEquals((await again.store()).year.sensible, (await run.store()).year.sensible);
      assertEquals(
        [...Deno.readDirSync(`${folder}/cache`)].length,
        7,
        `${performance.now() - start}`,
      );
    });

    await test.step("a change of the fan alone leaves climate, soil, house, tubes, headers on disk", async () => {
      const other = startRun(
        await openSmallStudy((text) => text.replace("speed: 0.4", "speed: 0.5")),
        { cacheFolder: `${folder}/cache` },
      );
      const { power } = await other.fan();
      await other.house();
      assert(power > Number(figures["fan.power"]!.value));
      assertEquals([...Deno.readDirSync(`${folder}/cache`)].length, 8);
    });

    await test.step("results.json holds study, inputs, provenance, figures, notices", async () => {
      await writeResults(run, `${folder}/out`);
      const file = JSON.parse(await Deno.readTextFile(`${folder}/out/results.json`));
      assertEquals(Object.keys(file), ["study", "inputs", "provenance", "figures", "notices"]);
      assertEquals(file.figures, JSON.parse(JSON.stringify(figures)));
      assertEquals(file.inputs.house.length, 12);
      assert(file.inputs.defaults.every(({ key }: { key: string }) => FIELDS.has(key)));
      assert(/^[0-9a-f]{64}$/.test(file.provenance.climateHash));
      assert(/^[0-9a-f]{64}$/.test(file.provenance.library.hash));
      const moment = new Date(0);
      const [one, two] = [await resultsOf(run, moment), await resultsOf(run, moment)];
      assertEquals(one, two);
      const marks = one.notices.map(({ chapter, text }) => `${chapter} ${text}`);
      assertEquals(new Set(marks).size, marks.length, "each notice once");
      assertEquals([...Deno.readDirSync(`${folder}/out`)].length, 2, "no part files");
    });

    await test.step("hourly.csv has 8760 rows, a unit in each head, and adds up to the figures", async () => {
      const text = await Deno.readTextFile(`${folder}/out/hourly.csv`);
      const table = Papa.parse<Record<string, string>>(text.trim(), { header: true });
      assertEquals(table.data.length, 8760);
      const heads = table.meta.fields!;
      for (const head of heads.slice(1)) assert(/\([^()]+\)$/.test(head), head);
      assertEquals(table.data[0]![heads[0]!], "2001-01-01T00:00");
      assertEquals(table.data[8759]![heads[0]!], "2001-12-31T23:00");
      const column = (head: string) => table.data.map((row) => Number(row[head]));
      const coldest = Math.min(...column("house temperature with store (degC)"));
      assert(Math.abs(coldest - Number(figures["store.coldestHour"]!.value)) <= 0.006);
      const energy = column("fan power (W)").reduce((sum, power) => sum + power, 0) / 1000;
      const stated = Number(figures["fan.energyPerYear"]!.value);
      assert(Math.abs(energy - stated) <= 0.005 * stated, `${energy} ${stated}`);
      const heatIn = table.data.reduce((sum, row) => {
        const total = Number(row["store sensible heat into soil (W)"]) +
          Number(row["store latent heat into soil (W)"]);
        return Number(row["fan share charge positive (1)"]) > 0 ? sum + total / 1000 : sum;
      }, 0);
      const statedIn = Number(figures["store.heatIn"]!.value);
      assert(Math.abs(heatIn - statedIn) <= 0.05 * statedIn, `${heatIn} ${statedIn}`);
    });
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});

Deno.test("a run without a cache folder writes nothing", async () => {
  // Property: null means no disk
  const run = startRun(await openSmallStudy(), { cacheFolder: null });
  assertEquals((await run.climate()).months.length, 12);
});
