// Property: stopped, killed, twice at once, on a full or read-only disk, under a clock that was set: a command keeps what was finished, says why in plain words, and goes on to the same bytes; long because each command meets each way.
import { assert, assertEquals } from "@std/assert";
import { join } from "node:path";
import { inTemporary } from "../../harness/in_temporary.ts";
import {
  SMALL_SWEEP as SWEEP,
  SMALL_SWEEP_ROWS as ROWS,
  writeSmallStudy,
} from "../../harness/small_study.ts";
import { task } from "../../harness/task.ts";
import { noteTrials, WHOLE } from "../test_attacks.ts";
import { MAY_MOUNT, mount, onDisk } from "./disk.ts";

/** True where the whole attack is asked for. */
const TRIED = Deno.env.get(WHOLE) !== undefined;
const named = (name: string) => name + (TRIED ? "" : " (only by the task harm)");

interface Ended {
  readonly code: number;
  readonly text: string;
}

/** What a person sees of a command; never where in the program it stopped. */
async function ended(child: Deno.ChildProcess): Promise<Ended> {
  const { code, stdout, stderr } = await child.output();
  const text = [stderr, stdout].map((bytes) => new TextDecoder().decode(bytes)).join("");
  assert(!/\bat .*\.ts:\d+|os error|undefined|NaN|panicked/.test(text), text);
  return { code, text };
}

/** A study and a sweep in a folder of their own. */
class Place {
  constructor(readonly folder: string) {}

  async prepare(): Promise<this> {
    await writeSmallStudy(this.folder);
    await Deno.writeTextFile(join(this.folder, "sweep.yaml"), SWEEP);
    return this;
  }

  sweep(out: string): Deno.ChildProcess {
    return task(
      "sweep",
      ["small.yaml", "sweep.yaml", "--out", out, "--workers", "0"],
      this.folder,
      {
        env: { WINTERGROUND_CACHE: join(this.folder, "cache") },
      },
    ).spawn();
  }

  /** Lines of the rows that are there. */
  async rows(out: string): Promise<readonly string[]> {
    const text = await Deno.readTextFile(join(this.folder, out, "rows.csv")).catch(() => "");
    return text.split("\n").slice(1, -1);
  }

  async finished(out: string): Promise<string> {
    const { code, text } = await ended(this.sweep(out));
    assertEquals(code, 0, text);
    return await Deno.readTextFile(join(this.folder, out, "rows.csv"));
  }
}

const inPlace = (work: (place: Place) => Promise<void>) =>
  inTemporary(async (folder) => await work(await new Place(folder).prepare()));

const names = (folder: string) => [...Deno.readDirSync(folder)].map(({ name }) => name).sort();

async function until(holds: () => Promise<boolean>): Promise<void> {
  for (let wait = 0; wait < 3000 && !await holds(); wait++) {
    await new Promise((done) => setTimeout(done, 20));
  }
}

/** Stops a sweep with so many rows done; goes on and compares. */
async function stoppedSweep(place: Place, signal: Deno.Signal, rows: number, whole: string) {
  const out = `${signal}-${rows}`;
  const child = place.sweep(out);
  const started = join(place.folder, out, "rows.csv");
  await (rows === 0
    ? until(() => Deno.stat(started).then(() => true, () => false))
    : until(async () => (await place.rows(out)).length >= rows));
  child.kill(signal);
  if (signal === "SIGKILL") await child.output();
  else {
    const { code, text } = await ended(child);
    assertEquals(code, signal === "SIGINT" ? 130 : 143, text);
    const left = names(join(place.folder, out)).filter((name) => name !== "rows.parquet");
    assertEquals(left, ["rows.csv", "sweep.json"], "a lock or a piece is left");
  }
  const kept = await place.rows(out);
  assert(kept.length >= rows && kept.length <= ROWS, `${kept.length} rows`);
  assertEquals(await place.finished(out), whole);
  for (const line of kept) assert(whole.includes(`${line}\n`), line);
}

Deno.test("a sweep stopped by SIGTERM keeps its rows, leaves no lock and goes on to the same bytes", () =>
  inPlace(async (place) => {
    const whole = await place.finished("whole");
    await stoppedSweep(place, "SIGTERM", 2, whole);
    await noteTrials(1, "a sweep stopped by SIGTERM");
  }));

Deno.test({
  name: named(
    "a sweep stopped by each signal at its start, early and late goes on to the same bytes",
  ),
  ignore: !TRIED,
  fn: () =>
    inPlace(async (place) => {
      const whole = await place.finished("whole");
      let tried = 0;
      for (const signal of ["SIGINT", "SIGTERM", "SIGKILL"] as const) {
        for (const rows of [0, 1, 5, 9]) {
          await stoppedSweep(place, signal, rows, whole);
          tried++;
        }
      }
      // before there is anything to keep
      for (const [signal, status] of [["SIGINT", 130], ["SIGTERM", 143]] as const) {
        const child = place.sweep(`early-${signal}`);
        await new Promise((done) => setTimeout(done, 700));
        child.kill(signal);
        const { code, text } = await ended(child);
        assert(code === status || (code === 0 && text.includes("done")), `${code} ${text}`);
        tried++;
      }
      await noteTrials(tried, `a sweep stopped ${tried} times, by SIGINT, SIGTERM and SIGKILL`);
    }),
});

Deno.test("two sweeps at once into one folder: one writes, the other is told whose the folder is", () =>
  inPlace(async (place) => {
    const whole = await place.finished("whole");
    const both = [place.sweep("one"), place.sweep("one")];
    const found = await Promise.all(both.map(ended));
    const codes = found.map(({ code }) => code).sort();
    const told = found.map(({ text }) => text).join("\n");
    // the second may come when the first has done: then there is nothing left for it
    assert(codes[0] === 0 && (codes[1] === 0 || codes[1] === 2), told);
    if (codes[1] === 2) {
      assert(/another run is writing to it \(process \d+, since 2/.test(told), told);
    }
    assertEquals(await Deno.readTextFile(join(place.folder, "one", "rows.csv")), whole);
    await noteTrials(1, "two sweeps at once into one folder");
  }));

Deno.test({
  name:
    "a sweep on a read-only disk is told so before anything is computed, on a full one without losing a row",
  ignore: !MAY_MOUNT,
  fn: () =>
    inPlace((place) =>
      onDisk(256 * 1024, async (disk) => {
        const whole = await place.finished("whole");
        // full: rows are kept, and with room again it goes on
        const out = join(disk, "full");
        await Deno.mkdir(out);
        await Deno.writeFile(join(disk, "ballast"), new Uint8Array(512 * 1024)).catch(() => {});
        const { size } = await Deno.stat(join(disk, "ballast"));
        await Deno.truncate(join(disk, "ballast"), size - 8192);
        const full = await ended(place.sweep(out));
        assert(full.code === 1 || full.code === 2, full.text);
        assert(full.text.includes("the disk is full"), full.text);
        await Deno.remove(join(disk, "ballast"));
        const again = await ended(place.sweep(out));
        assertEquals(again.code, 0, again.text);
        assertEquals(await Deno.readTextFile(join(out, "rows.csv")), whole);
        assert(await mount("-o", "remount,ro", disk));
        for (const target of [join(disk, "new"), out]) {
          const { code, text } = await ended(place.sweep(target));
          if (target === out && code === 0) continue; // all rows are there: nothing is written
          assertEquals(code, 2, text);
          assert(text.includes("the disk is read-only"), text);
          assert(!text.includes("the study as it is: computing"), text);
        }
        await noteTrials(3, "sweeps on a full and a read-only disk");
      })
    ),
});

Deno.test("a sweep whose files were written under a clock set a year on or back goes on", () =>
  inPlace(async (place) => {
    const whole = await place.finished("clock");
    const path = join(place.folder, "clock", "rows.csv");
    for (const years of [1, -1]) {
      await Deno.writeTextFile(path, whole.split("\n").slice(0, 8).join("\n") + "\n");
      const moment = new Date(Date.now() + years * 365 * 86_400_000);
      for (const name of names(join(place.folder, "clock"))) {
        await Deno.utime(join(place.folder, "clock", name), moment, moment);
      }
      assertEquals(await place.finished("clock"), whole);
    }
    await noteTrials(2, "a sweep's files a year on and back");
  }));

/** A made-up finished run. */
async function finishedRun(folder: string, saved: number): Promise<void> {
  await Deno.mkdir(folder);
  const results = {
    study: { name: "a", title: "a", author: "a", question: "q" },
    inputs: { tubes: { length: saved } },
    provenance: {
      studyHash: String(saved),
      climateHash: "c",
      library: { version: "1", hash: "h" },
      deno: "2.9.6",
      time: "2026-01-01T00:00:00Z",
    },
    figures: { "store.savedHeat": { value: saved, unit: "kWh", label: "heat saved" } },
    notices: [],
  };
  await Deno.writeTextFile(join(folder, "results.json"), JSON.stringify(results));
}

Deno.test({
  name:
    "compare stopped, twice at once, on a full and on a read-only disk leaves the earlier page whole",
  ignore: !MAY_MOUNT,
  fn: () =>
    onDisk(512 * 1024, async (disk) => {
      await finishedRun(join(disk, "old"), 3000);
      await finishedRun(join(disk, "new"), 3500);
      const start = (first: string, second: string, out = "page") =>
        task("compare", [first, second, "--out", out], disk).spawn();
      assertEquals((await ended(start("old", "new"))).code, 0);
      const page = () => Deno.readTextFile(join(disk, "page", "differences.html"));
      const [before] = [await page(), await ended(start("new", "old", "other"))];
      const other = await Deno.readTextFile(join(disk, "other", "differences.html"));
      let tried = 0;
      for (
        const [signal, status] of [["SIGINT", 130], ["SIGTERM", 143], ["SIGKILL", 137]] as const
      ) {
        const child = start("new", "old");
        await new Promise((done) => setTimeout(done, 150 * tried));
        child.kill(signal);
        const { code, text } = await ended(child);
        assert(code === status || code === 0 || code === 143 || code === 130, `${code} ${text}`);
        assert([before, other].includes(await page()), "half a page");
        tried++;
      }
      const twice = await Promise.all([start("old", "new"), start("old", "new")].map(ended));
      assert(twice.some(({ code }) => code === 0), twice.map(({ text }) => text).join());
      assertEquals(await page(), before);
      await Deno.writeFile(join(disk, "ballast"), new Uint8Array(1024 * 1024)).catch(() => {});
      const full = await ended(start("new", "old"));
      assert(full.code === 1 || full.code === 2, full.text);
      assert(full.text.includes("the disk is full"), full.text);
      assertEquals(await page(), before);
      await Deno.remove(join(disk, "ballast"));
      assertEquals((await ended(start("old", "new"))).code, 0);
      assert(await mount("-o", "remount,ro", disk));
      const still = await ended(start("new", "old"));
      assertEquals(still.code, 2, still.text);
      assert(still.text.includes("the disk is read-only"), still.text);
      assertEquals(await page(), before);
      assertEquals(names(disk), ["new", "old", "other", "page"]);
      await noteTrials(
        tried + 4,
        `compare stopped ${tried} times, twice at once, full and read-only disk`,
      );
    }),
});

/** The texts of a folder by name. */
const texts = (folder: string): Record<string, string> =>
  Object.fromEntries(
    names(folder).map((name) => [name, Deno.readTextFileSync(join(folder, name))]),
  );

Deno.test({
  name: named(
    "publish stopped, twice at once, on a full and on a read-only disk leaves the earlier site whole",
  ),
  ignore: !TRIED || !MAY_MOUNT,
  fn: () =>
    onDisk(32e6, async (disk) => {
      const start = (edition: string, out = "site") =>
        task("publish", ["--edition", edition, "--out", out], disk).spawn();
      assertEquals((await ended(start("student"))).code, 0);
      assertEquals((await ended(start("instructor", "other"))).code, 0);
      const pages = (out: string) => {
        const { "written.json": _, ...all } = texts(join(disk, out));
        return all;
      };
      const [student, instructor] = [pages("site"), pages("other")];
      assert(student["index.html"] !== instructor["index.html"], "editions look alike");
      const isWhole = () => {
        const now = pages("site");
        assert(same(now, student) || same(now, instructor), "a mixture of two sites");
      };
      const same = (one: object, two: object) => JSON.stringify(one) === JSON.stringify(two);
      let tried = 0;
      for (const signal of ["SIGINT", "SIGTERM", "SIGKILL"] as const) {
        for (const wait of [100, 700, 1500, 3000]) {
          const child = start("instructor");
          await new Promise((done) => setTimeout(done, wait));
          child.kill(signal);
          const { code, text } = await ended(child);
          assert([0, 130, 143, 137].includes(code), `${code} ${text}`);
          isWhole();
          tried++;
        }
      }
      const twice = await Promise.all([start("student"), start("student")].map(ended));
      assert(twice.some(({ code }) => code === 0), twice.map(({ text }) => text).join());
      assert(same(pages("site"), student), "not the last site");
      await Deno.writeFile(join(disk, "ballast"), new Uint8Array(64e6)).catch(() => {});
      const full = await ended(start("instructor"));
      assert(full.code === 1 || full.code === 2, full.text);
      assert(full.text.includes("the disk is full"), full.text);
      assert(same(pages("site"), student), "a full disk changed the site");
      await Deno.remove(join(disk, "ballast"));
      assert(await mount("-o", "remount,ro", disk));
      const still = await ended(start("instructor"));
      assertEquals(still.code, 2, still.text);
      assert(still.text.includes("the disk is read-only"), still.text);
      assert(same(pages("site"), student), "a read-only disk changed the site");
      assertEquals(names(disk), ["other", "site"]);
      await noteTrials(
        tried + 4,
        `publish stopped ${tried} times, twice at once, full and read-only disk`,
      );
    }),
});

Deno.test("a study stopped while it reads a long log ends with its status and writes nothing", () =>
  inPlace(async (place) => {
    const log = join(place.folder, "log.csv");
    const row = "2026-01-05T00:00,41.25,60,0.35\n".repeat(30_000);
    await Deno.writeTextFile(log, "time,air,rh,power\n");
    for (let part = 0; part < 100; part++) await Deno.writeTextFile(log, row, { append: true });
    await Deno.writeTextFile(
      join(place.folder, "map.yaml"),
      "loggers: {house: {time: {timeZone: UTC-6}, sensors: {air: {column: air, " +
        "quantity: airTemperature, unit: degF, zone: inside}}}}\n",
    );
    const study = join(place.folder, "small.yaml");
    const text = await Deno.readTextFile(study);
    await Deno.writeTextFile(
      study,
      `${text}measured: {logMap: map.yaml, logs: [{file: log.csv}]}\n`,
    );
    const before = names(place.folder);
    let tried = 0;
    for (const [signal, status] of [["SIGINT", 130], ["SIGTERM", 143], ["SIGKILL", 137]] as const) {
      const child = task("study", ["small.yaml", "--out", "result", "--quick"], place.folder, {
        env: { WINTERGROUND_CACHE: join(place.folder, "cache") },
      }).spawn();
      await new Promise((done) => setTimeout(done, 900));
      child.kill(signal);
      const { code, text } = await ended(child);
      assertEquals(code, status, text);
      assertEquals(names(place.folder).filter((name) => name !== "cache"), before, signal);
      tried++;
    }
    await noteTrials(tried, `a study stopped ${tried} times while it reads a log of 90 MB`);
  }));
