// Property: the rows of a sweep are the same however they are computed; nothing finished is lost, nothing of the user's overwritten.
import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { parquetReadObjects } from "hyparquet";
import { openStudy, startRun } from "winterground/study/mod.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import {
  SMALL_SWEEP as SWEEP,
  SMALL_SWEEP_ROWS as ROWS,
  writeSmallStudy,
} from "../harness/small_study.ts";
import { task } from "../harness/task.ts";

interface Place {
  readonly folder: string;
  readonly study: string;
  readonly sweep: string;
}

async function inPlace(work: (place: Place) => Promise<void>, sweepText = SWEEP): Promise<void> {
  await inTemporary(async (folder) => {
    const study = await writeSmallStudy(folder);
    const sweep = `${folder}/sweep.yaml`;
    await Deno.writeTextFile(sweep, sweepText);
    await work({ folder, study, sweep });
  });
}

function command(
  { folder, study, sweep }: Place,
  out: string,
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Deno.Command {
  return task("sweep", [study, sweep, "--out", `${folder}/${out}`, ...args], "", {
    env: { WINTERGROUND_CACHE: `${folder}/cache`, ...env },
  });
}

async function run(
  place: Place,
  out: string,
  args: readonly string[] = [],
  env: Readonly<Record<string, string>> = {},
): Promise<{ readonly code: number; readonly text: string }> {
  const { code, stdout, stderr } = await command(place, out, args, env).output();
  const decode = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
  return { code, text: decode(stderr) + decode(stdout) };
}

const table = ({ folder }: Place, out: string, name = "rows.csv") =>
  Deno.readTextFile(`${folder}/${out}/${name}`);

Deno.test("deno task sweep writes the same bytes with no, one and two workers, and from merged parts", () =>
  inPlace(async (place) => {
    for (const workers of ["0", "1", "2"]) {
      const { code, text } = await run(place, `w${workers}`, ["--workers", workers]);
      assertEquals(code, 0, text);
    }
    const whole = await table(place, "w0");
    assertEquals(whole.trimEnd().split("\n").length, ROWS + 1);
    assertEquals(await table(place, "w1"), whole);
    assertEquals(await table(place, "w2"), whole);
    assertEquals((await run(place, "parts", ["--shard", "1/3"])).code, 0);
    assertEquals((await run(place, "parts", ["--shards", "3"], { PARALLEL_SEQ: "2" })).code, 0);
    const early = await run(place, "parts", ["--merge"]);
    assertEquals(early.code, 1);
    assert(early.text.includes(`4 of ${ROWS} are missing (3, 6, 9, 12)`), early.text);
    assertEquals(
      (await run(place, "parts", ["--shards", "3"], { JOB_COMPLETION_INDEX: "2" })).code,
      0,
    );
    assertEquals((await run(place, "parts", ["--merge"])).code, 0);
    assertEquals(await table(place, "parts"), whole);
    const parquet = (out: string) => Deno.readFile(`${place.folder}/${out}/rows.parquet`);
    assertEquals(await parquet("parts"), await parquet("w2"));
  }));

Deno.test("deno task sweep gives the figures of the study with its keys changed, in Parquet as in CSV", () =>
  inPlace(async (place) => {
    const { code, text } = await run(place, "out");
    assertEquals(code, 0, text);
    const [head, ...lines] = (await table(place, "out")).trimEnd().split("\n")
      .map((line) => line.split(","));
    const bytes = await Deno.readFile(`${place.folder}/out/rows.parquet`);
    const rows = await parquetReadObjects({ file: bytes.buffer as ArrayBuffer });
    assertEquals(rows.length, ROWS);
    rows.forEach((row, place) =>
      head!.forEach((name, column) => {
        const cell = lines[place]![column]!;
        const value = row[name] as number | string | null;
        assertEquals(value === null ? "" : String(value), cell, name);
      })
    );
    const study = await openStudy(
      await writeSmallStudy(
        place.folder,
        (given) =>
          `${given.replace("count: 6,", "count: 6, tube: corrugated-3in, length: 9 m,")}
soil: {moisture: 35 %}
`,
      ),
    );
    const figures = await startRun(study, { cacheFolder: null }).figures("tubes", "fan");
    const last = rows.at(-1)!;
    assertEquals(last["given soil.moisture (1)"], 0.35);
    for (const key of ["tubes.pressureDrop (Pa)", "fan.power (W)", "tubes.effectiveness (1)"]) {
      const value = figures[key.split(" ")[0]!]!.value as number;
      assertEquals(last[key], Number(value.toPrecision(10)), key);
    }
  }));

Deno.test("deno task sweep killed with rows done goes on and loses at most those in hand", () =>
  inPlace(async (place) => {
    const child = command(place, "out", ["--workers", "1"]).spawn();
    const texts = [child.stdout.text(), child.stderr.text()]; // read, so that it never waits
    const rows = async () => (await table(place, "out").catch(() => "")).split("\n").slice(1, -1);
    while ((await rows()).length < 3) await new Promise((done) => setTimeout(done, 20));
    child.kill("SIGKILL");
    await child.status;
    await Promise.all(texts);
    const kept = await rows();
    assert(kept.length >= 3 && kept.length < ROWS, `${kept.length} rows`);
    // a row that was being written
    await Deno.writeTextFile(`${place.folder}/out/rows.csv`, "7,0.0", { append: true });
    const again = await run(place, "out", ["--workers", "1"]);
    assertEquals(again.code, 0, again.text);
    assert(again.text.includes(`${kept.length} of ${ROWS} rows are there already`), again.text);
    const whole = await table(place, "out");
    for (const line of kept) assert(whole.includes(`${line}\n`), line);
    await run(place, "other");
    assertEquals(await table(place, "other"), whole);
  }));

Deno.test("deno task sweep says why a row fails and goes on", () =>
  inPlace(async (place) => {
    const { code, text } = await run(place, "out");
    assertEquals(code, 0, text);
    assert(text.includes("2 rows, 1 of them with a fault"), text);
    const [, sound, faulty] = (await table(place, "out")).split("\n");
    assert(sound!.endsWith(","), sound);
    assert(faulty!.includes("house.ridgeHeight") || faulty!.includes("ridge"), faulty);
    assert(!faulty!.includes(".yaml:"), "a place in a text the user never saw");
  }, "chapters: [tubes]\nkeys: {house.ridgeHeight: [4 m, 1.5 m]}\n"));

Deno.test("deno task sweep adds no rows to those of another study or sweep, and none to a folder of the user's", () =>
  inPlace(async (place) => {
    const small = { ...place, sweep: `${place.folder}/small.yaml.sweep` };
    await Deno.writeTextFile(small.sweep, "chapters: [climate]\nkeys: {soil.moisture: [20 %]}\n");
    assertEquals((await run(small, "out")).code, 0);
    const before = await table(small, "out");
    const otherSweep = await run(place, "out");
    assertEquals(otherSweep.code, 2);
    assert(otherSweep.text.includes("the sweep file changed"), otherSweep.text);
    await writeSmallStudy(place.folder, (text) => text.replace("12 m", "13 m"));
    const otherStudy = await run(small, "out");
    assertEquals(otherStudy.code, 2);
    assert(otherStudy.text.includes("the study, or a file it names changed"), otherStudy.text);
    assertEquals(await table(small, "out"), before);
    await Deno.mkdir(`${place.folder}/mine`);
    await Deno.writeTextFile(`${place.folder}/mine/letter.txt`, "dear");
    const mine = await run(small, "mine");
    assertEquals(mine.code, 2);
    assert(mine.text.includes('no sweep wrote, such as "letter.txt"'), mine.text);
    assertEquals(await Deno.readTextFile(`${place.folder}/mine/letter.txt`), "dear");
  }));

Deno.test("deno task sweep --doubt samples the usual ranges, keeps a changed sweep file, and says what moves a figure", () =>
  inPlace(async (place) => {
    // Property: bands hold the study as it is; shares are shares; the file is the user's once written
    const doubt = (out: string, ...args: string[]) =>
      task("sweep", [place.study, "--out", `${place.folder}/${out}`, ...args], "", {
        env: { WINTERGROUND_CACHE: `${place.folder}/cache` },
      }).output();
    const path = `${place.folder}/d.yaml`;
    await Deno.writeTextFile(
      path,
      "form: sample\nrows: 16\nchapters: [fan]\nkeys:\n" +
        "  tubes.extraLosses: { from: 0.2, to: 2 }\n  fan.filterPressure: { from: 5 Pa, to: 20 Pa }\n",
    );
    const { code, stdout, stderr } = await doubt("d", "--doubt", "8");
    const text = new TextDecoder().decode(stdout) + new TextDecoder().decode(stderr);
    assertEquals(code, 0, text);
    assert(text.includes("is there already, and is used"), text);
    const [head, ...rows] = (await table(place, "d", "doubt.csv")).trimEnd().split("\n")
      .map((line) => line.split(","));
    const flow = rows.find(([key]) => key === "fan.airFlow")!;
    const at = (name: string) => Number(flow[head!.indexOf(name)]);
    assertEquals(at("samples"), 16);
    assert(at("low") < at("as it is") && at("as it is") < at("high"), flow.join());
    const filter = at("fan.filterPressure with others (share)");
    const bends = at("tubes.extraLosses with others (share)");
    assert(filter > 0 && bends > 0 && filter + bends > 0.99 && filter + bends < 1.1, flow.join());
    const both = await doubt("e", `${place.folder}/sweep.yaml`, "--doubt", "8");
    assertEquals(both.code, 2);
  }));

Deno.test("deno task sweep --doubt draws a winter for each sample, and tells the share of the weather", () =>
  inPlace(async (place) => {
    // Property: winters are run once and kept; figures of the store have a share of the weather, those
    // of the fan none; without winters the console says so
    await Deno.writeTextFile(
      `${place.folder}/d.yaml`,
      "form: sample\nrows: 8\nchapters: [fan, store]\nkeys:\n  fan.filterPressure: { from: 5 Pa, to: 20 Pa }\n",
    );
    const doubt = async () => {
      const { code, stderr, stdout } = await task(
        "sweep",
        [place.study, "--doubt", "8", "--out", `${place.folder}/d`],
        "",
        { env: { WINTERGROUND_CACHE: `${place.folder}/cache` } },
      ).output();
      const text = new TextDecoder().decode(stderr) + new TextDecoder().decode(stdout);
      assertEquals(code, 0, text);
      return text;
    };
    assert((await doubt()).includes("worth.winters is 0"));
    await Deno.remove(`${place.folder}/d`, { recursive: true });
    await writeSmallStudy(place.folder, (text) => text.replace("winters: 0", "winters: 10"));
    const told = await doubt();
    assert(told.includes("10 winters of the study as it is"));
    const winters = (await table(place, "d", "weather.csv")).trimEnd().split("\n");
    assertEquals(winters.length, 11);
    const first = await table(place, "d", "doubt.csv");
    const [head, ...rows] = first.trimEnd().split("\n").map((line) => line.split(","));
    const share = (key: string) =>
      rows.find(([name]) => name === key)![head!.indexOf("weather (share)")]!;
    assert(Number(share("store.savedHeat")) > 0.5, share("store.savedHeat"));
    const saved = rows.find(([name]) => name === "store.savedHeat")!;
    const [known, low, high] = ["as it is", "low", "high"]
      .map((name) => Number(saved[head!.indexOf(name)]));
    const half = /doubtHeatSaved: ([\d.]+)\s?% in worth/u.exec(told);
    assertAlmostEquals(Number(half![1]), 100 * (high! - low!) / 2 / known!, 0.6, told);
    assertEquals(share("fan.airFlow"), "");
    assert(!(await doubt()).includes("10 winters of"), "the winters are there already");
    assertEquals(await table(place, "d", "doubt.csv"), first);
  }));
