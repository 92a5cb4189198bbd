// Steps of one run, long because computing it again for each would take minutes.
import { assert, assertEquals } from "@std/assert";
import Papa from "papaparse";
import { studyFigures } from "winterground/study/figures.ts";
import { FIELDS } from "winterground/study/file/fields.ts";
import {
  CHAPTERS,
  COMPUTATIONS,
  type Figure,
  resultsOf,
  startRun,
  writeResults,
} from "winterground/study/mod.ts";
import { findCrop } from "../../../lib/house/mod.ts";
import { openSmallStudy } from "../../harness/small_study.ts";
import {
  carriedByAir,
  figuresFromHours,
  firstFreeze,
  heatByAir,
  latentHeats,
  middleOfSun,
  readHours,
} from "../results/figures_from_hours.ts";

/** Keys results.json must hold for the chapters up to the store. */
const KEYS = `climate.meanTemperature climate.coldestHour climate.design99_6
climate.heatingDegreeDays18 climate.globalRadiation soil.meanTemperature soil.surfaceAmplitude
soil.diffusivity soil.conductivity soil.frostDepth soil.temperatureAtTubeDepthMin
soil.temperatureAtTubeDepthMax house.floorArea house.lossCoefficient house.peakHeatLoss
house.heatDemand house.coldestHourNoStore house.hoursBelowFreezingNoStore house.firstFreezeNoStore
tubes.count tubes.length tubes.totalLength tubes.diameter tubes.airSpeed tubes.flowPerTube
tubes.pressureDrop tubes.effectiveness headers.diameter headers.areaRatio headers.flowMin
headers.flowMax headers.unevenness fan.airFlow fan.pressure fan.power fan.energyPerYear fan.energyPerHeatedYear
fan.specificPower store.heatIn store.heatOut store.latentIn store.recovery store.cop
store.carriedAcrossSeasons store.coldestHour store.hoursBelowFreezing store.firstFreeze
store.backupHeat store.balanceResidual store.savedHeat store.savedHeatPerFanEnergy
store.taggedReturn store.edgeLoss store.hoursBelowCropLimit store.lastFreeze house.edgeLoss
house.hoursBelowCropLimitNoStore house.lastFreezeNoStore`.split(/\s+/);

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

    await test.step("figures of an extra wait for nobody, and are there once it is", async () => {
      const key = "worth.coldestHour10Years";
      assertEquals(figures[key]!.value, null);
      assert(figures[key]!.label.includes("when asked for"), figures[key]!.label);
      assertEquals(figures[key]!.provisional, true, "no table shows it beside the one that is");
      const asked = startRun(study, { cacheFolder: `${folder}/cache` });
      await asked.odds();
      const { label, provisional } = (await asked.figures())[key]!;
      assertEquals(provisional, undefined);
      assert(label.includes("no winters are counted"), label); // the study wants none
      const { steps: _, ...ladder } = COMPUTATIONS.get("ladder")!;
      const waiting = startRun(study, {
        cacheFolder: `${folder}/cache`,
        figuresOfExtras: true,
        computations: new Map([...COMPUTATIONS, ["ladder", { ...ladder, compute: () => null }]]),
      });
      const waited = await waiting.figures("worth");
      assertEquals(waited[key]!.provisional, undefined);
      assertEquals(waited["worth.ladder"]!.provisional, undefined);
    });

    await test.step("a chapter alone has the figures of the whole run to every digit", async () => {
      for (const { name } of CHAPTERS) {
        if (name === "house") continue; // the store refines some of its figures
        for (const [key, figure] of Object.entries(await run.figures(name))) {
          assertEquals(figures[key], figure, key);
        }
      }
    });

    await test.step("one result is one object however often it is asked for", async () => {
      assert(await run.store() === await run.store());
    });

    await test.step("months, days, seasons and running totals of the store add up to its figures", async () => {
      const { heatIn, heatOut, latentIn, latentOut, months, summary } = await run.store();
      const total = (rows: readonly number[]) => rows.reduce((sum, value) => sum + value, 0);
      const close = (found: number, stated: number, what: string) =>
        assert(Math.abs(found - stated) <= 1e-9 * heatIn, `${what}: ${found}, ${stated}`);
      close(total(months.map((row) => row.heatIn)), heatIn, "months in");
      close(total(months.map((row) => row.heatOut)), heatOut, "months out");
      close(total(months.map((row) => row.latentIn)), latentIn, "months latent in");
      close(total(months.map((row) => row.latentOut)), latentOut, "months latent out");
      for (const rows of [summary.heatMonths, summary.heatDays]) {
        close(total(rows.map((row) => row.sensibleIn + row.latentIn)), heatIn, "in");
        close(total(rows.map((row) => row.sensibleOut + row.latentOut)), heatOut, "out");
      }
      close(summary.recoveryByDay.at(-1)!.heatIn, heatIn, "recovery in");
      close(summary.recoveryByDay.at(-1)!.heatOut, heatOut, "recovery out");
      close(summary.runningTotals.heatIn.at(-1)!, heatIn, "running total in");
      close(summary.runningTotals.heatOut.at(-1)!, heatOut, "running total out");
    });

    await test.step("headline figures are what their names say", async () => {
      const { store } = await run.results();
      const stated = (key: string) => Number(figures[key]!.value);
      const saved = stated("store.backupHeatNoFan") - stated("store.backupHeat");
      assert(Math.abs(stated("store.savedHeat") - saved) < 1e-9 * stated("store.backupHeatNoFan"));
      const perFan = saved / stated("fan.energyPerHeatedYear");
      assert(Math.abs(stated("store.savedHeatPerFanEnergy") - perFan) < 1e-9 * Math.abs(perFan));
      // heat followed by its tags: what was put in and came back, without the ground's own warmth
      const back = store.tagged.reduce((sum, quarter) => sum + quarter.givenBack, 0);
      const returned = stated("store.taggedReturn");
      assert(Math.abs(returned - back / store.heatIn) < 1e-9 && returned > 0 && returned < 1);
      const ground = store.quarters.reduce((sum, row) => sum + row[4]!, 0);
      assert(Math.abs(back + ground - store.heatOut) < 1e-6 * store.heatIn, `${ground}`);
      const limit = findCrop(run.study.house.crop).killingLimit;
      const below = (air: Float64Array) => air.filter((value) => value < limit).length;
      assertEquals(stated("store.hoursBelowCropLimit"), below(store.year.house.airTemperature));
      assertEquals(
        stated("house.hoursBelowCropLimitNoStore"),
        below(store.noFan.airTemperature),
      );
      assert(stated("house.edgeLoss") > 0 && stated("store.edgeLoss") > 0);
    });

    await test.step("what the house does without a store is the store's year with the fan never on", async () => {
      const { house, store } = await run.results();
      const stated = (key: string) => Number(figures[key]!.value);
      assertEquals(stated("house.heatDemand"), stated("store.backupHeatNoFan"));
      assertEquals(stated("house.coldestHourNoStore"), Math.min(...store.noFan.airTemperature));
      assertEquals(stated("house.hoursBelowFreezingNoStore"), store.cropNoFan.freezing.hours);
      const early = studyFigures({ house });
      const screening = Object.keys(early).filter((key) => /screening/.test(early[key]!.label));
      assertEquals(screening.length, 8);
      assertEquals(early["house.coldestHourNoStore"]!.value, house.coldestHour);
      for (const key of screening) {
        assert(figures[key] !== undefined && !/screening/.test(figures[key].label), key);
        assert(early[key]!.provisional === true && figures[key].provisional === undefined, key);
        assert(figures[key].label.includes("fan always off"), key);
      }
      const labels = Object.values(figures).map(({ label }) => label);
      assertEquals(new Set(labels).size, labels.length, "no two figures under one label");
    });

    await test.step("a second run takes everything from disk, bit for bit", async () => {
      const computed: string[] = [];
      const onResult = (name: string, kept: boolean) => kept || computed.push(name);
      const again = startRun(await openSmallStudy(), { cacheFolder: `${folder}/cache`, onResult });
      assertEquals(await again.figures(), figures);
      assertEquals((await again.store()).year.sensible, (await run.store()).year.sensible);
      assertEquals(computed, []);
    });

    await test.step("a change of the fan alone leaves climate, soil, house, tubes, headers on disk", async () => {
      const computed: string[] = [];
      const onResult = (name: string, kept: boolean) => kept || computed.push(name);
      const other = startRun(
        await openSmallStudy((text) => text.replace("speed: 0.4", "speed: 0.5")),
        { cacheFolder: `${folder}/cache`, onResult },
      );
      const { power } = await other.fan();
      await other.house();
      assert(power > Number(figures["fan.power"]!.value));
      assertEquals(computed, ["fan"]);
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
      const again = figuresFromHours(readHours(text));
      for (const [key, { value, unit, allowed }] of Object.entries(again)) {
        assertEquals(figures[key]!.unit, unit, key);
        const stated = Number(figures[key]!.value);
        assert(Math.abs(value - stated) <= allowed, `${key}: ${value} in the hours, ${stated}`);
      }
      assert(again["store.heatIn"]!.value > 100 && again["store.heatOut"]!.value > 10);
      assert(again["store.hoursBelowFreezing"]!.value > 0);
      const freezes = {
        "store.firstFreeze": "house temperature with store (degC)",
        "house.firstFreezeNoStore": "house temperature without store (degC)",
      };
      for (const [key, head] of Object.entries(freezes)) {
        // an hour that rounding brought to 0 may be on either side
        const dates = [false, true].map((rounded) => firstFreeze(readHours(text), head, rounded));
        assert(dates.includes(figures[key]!.value as string | null), `${key}: ${dates}`);
      }
    });

    await test.step("each column is the series its head names, and floor heat goes into a cooler soil", async () => {
      const hours = readHours(await Deno.readTextFile(`${folder}/out/hourly.csv`));
      const { house, store } = await run.results();
      const { noFan, year } = store;
      const named: readonly (readonly [string, Float64Array, number])[] = [
        ["house temperature in screening year (degC)", house.freeRunning.airTemperature, 0.0051],
        ["house temperature without store (degC)", noFan.airTemperature, 0.0051],
        ["heater holding the set point without store (W)", store.heaterNoFan, 0.51],
        ["house temperature with store (degC)", year.house.airTemperature, 0.0051],
        ["house humidity without store (1)", noFan.relativeHumidity, 0.00051],
        ["house humidity with store (1)", year.house.relativeHumidity, 0.00051],
        ["solar heat in house (W)", year.house.solar, 0.51],
        ["vent heat (W)", year.house.vent, 0.51],
        ["soil temperature between tubes (degC)", year.storeTemperature, 0.0051],
      ];
      for (const [head, series, digit] of named) {
        hours.column(head).forEach((value, hour) =>
          assert(Math.abs(value - series[hour]!) <= digit, `${head}, hour ${hour}`)
        );
      }
      const floor = hours.column("floor heat into soil (W)");
      const air = hours.column("house temperature with store (degC)");
      const mean = (chosen: readonly number[]) =>
        chosen.reduce((sum, value) => sum + value, 0) / chosen.length;
      assert(mean(floor.filter((_, hour) => air[hour]! > 22)) > 100, "a hot house heats its floor");
      assert(mean(floor.filter((_, hour) => air[hour]! < 0)) < -10, "a freezing one is warmed");
      const vent = hours.column("vent heat (W)");
      assert(Math.min(...vent) < -1000, "vents cool");
      const backup = (key: "backupHeat" | "backupHeatNoFan") =>
        store.months.reduce((sum, month) => sum + month[key], 0);
      for (const key of ["backupHeat", "backupHeatNoFan"] as const) {
        const stated = Number(figures[`store.${key}`]!.value);
        assert(Math.abs(backup(key) - stated) < 1e-6 * stated, key);
      }
      assert(backup("backupHeat") !== backup("backupHeatNoFan"));
      assertEquals(year.house.heater.some((value) => value > 0), false, "the main year runs free");
    });

    await test.step("every heat sum follows from the air in hourly.csv alone", async () => {
      const hours = readHours(await Deno.readTextFile(`${folder}/out/hourly.csv`));
      const [share, sensible, latent] = [
        hours.column("fan share charge positive (1)"),
        hours.column("store sensible heat into soil (W)"),
        hours.column("store latent heat into soil (W)"),
      ];
      const air = heatByAir(hours);
      const rate = Math.max(...hours.column("air through tubes (W/K)"));
      // temperatures to a thousandth: half a digit at either end, and whole watts
      air.forEach((heat, hour) =>
        assert(Math.abs(heat - sensible[hour]!) <= 0.002 * rate + 1, `${hour}: ${heat} W`)
      );
      const intake = hours.column("tube intake temperature (degC)");
      const house = hours.column("house temperature with store (degC)");
      share.forEach((value, hour) => {
        if (value === 0) assert(Number.isNaN(intake[hour]!), `hour ${hour} draws nothing`);
        if (value === -1) assert(Math.abs(intake[hour]! - house[hour]!) < 0.5, `hour ${hour}`);
      });
      const kilowattHours = (values: readonly number[], way: number) =>
        way * values.reduce((sum, value, k) => sum + (share[k]! * way > 0 ? value : 0), 0) / 1000;
      for (
        const [way, total, part] of [[1, "heatIn", "latentIn"], [
          -1,
          "heatOut",
          "latentOut",
        ]] as const
      ) {
        const stated = (key: string) => Number(figures[`store.${key}`]!.value);
        const wet = kilowattHours(latent, way);
        assert(Math.abs(wet - stated(part)) <= 0.002 * stated(total), part);
        const heat = kilowattHours(air, way) + wet;
        assert(Math.abs(heat / stated(total) - 1) < 0.002, `${total}: ${heat} kWh`);
      }
    });

    await test.step("hourly.csv balances by itself: water, fan, air, sun", async () => {
      const hours = readHours(await Deno.readTextFile(`${folder}/out/hourly.csv`));
      const latent = latentHeats(hours);
      assert(Math.abs(latent.heat - latent.water) < 0.5, `${latent.heat} ${latent.water} kWh`);
      const running = Number(figures["fan.power"]!.value);
      const air = hours.column("air through tubes (W/K)");
      // a fan moves a volume: its power and the mass it moves go with the density of the hour alike
      const power = hours.column("fan power (W)");
      const perAir = power.reduce((sum, value) => sum + value, 0) /
        air.reduce((sum, value) => sum + value, 0);
      power.forEach((value, hour) =>
        assert(Math.abs(value - perAir * air[hour]!) <= 0.051 + 0.0005 * running, `hour ${hour}`)
      );
      const share = hours.column("fan share charge positive (1)");
      share.forEach((value, hour) => {
        const atRated = Math.abs(value) * running;
        assert(Math.abs(power[hour]! - atRated) <= 0.05 + 0.25 * atRated, `hour ${hour}`);
      });
      // noon of the sun at 100° west in the time of 90° west is 12:40; the equation of time moves single
      // months by a quarter of an hour and the year by less than a tenth
      const noon = middleOfSun(hours);
      assert(Math.abs(noon - (12 + 40 / 60)) < 0.1, `the sun's middle is at ${noon} h`);
      // 500 m above the sea, 95 461 Pa by the standard atmosphere, 25 degC: 1.1155 kg/m³
      const rate = Number(figures["fan.airFlow"]!.value) * 95461 / (287.042 * 298.15) * 1006;
      const carried = carriedByAir(hours, running / rate);
      assert(carried.count > 200, `${carried.count} hours`);
      assert(Math.abs(carried.rate / rate - 1) < 0.05, `${carried.rate} W/K for ${rate}`);
    });
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});

Deno.test("figures of one chapter are those of the whole run, and nothing else is computed", async () => {
  // Property: --chapters gives the same digits; parts say what they are parts of
  const folder = await Deno.makeTempDir();
  try {
    const computed: string[] = [];
    const onResult = (name: string, kept: boolean) => computed.push(`${name} ${kept}`);
    const study = await openSmallStudy();
    const run = startRun(study, { cacheFolder: `${folder}/cache`, onResult });
    const soil = await run.figures("soil");
    assertEquals(computed, ["soil false"]);
    assert(Object.keys(soil).length > 0);
    assert(Object.keys(soil).every((key) => key.startsWith("soil.")));
    await writeResults(run, `${folder}/out`, ["soil", "climate"]);
    assertEquals([...Deno.readDirSync(`${folder}/out`)].map(({ name }) => name), ["results.json"]);
    const file = JSON.parse(await Deno.readTextFile(`${folder}/out/results.json`));
    assertEquals(file.chapters, ["climate", "soil"]);
    assertEquals(computed, ["soil false", "climate false"]);
    const again = startRun(study, { cacheFolder: `${folder}/cache`, onResult });
    assertEquals(await again.figures("soil"), soil);
    assertEquals(computed.at(-1), "soil true");
    for (const [key, figure] of Object.entries(soil)) {
      assertEquals(file.figures[key], JSON.parse(JSON.stringify(figure)), key);
    }
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});

Deno.test("a run without a cache folder writes nothing", async () => {
  // Property: null means no disk
  const run = startRun(await openSmallStudy(), { cacheFolder: null });
  assertEquals((await run.climate()).months.length, 12);
});
