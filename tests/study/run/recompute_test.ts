import { assert, assertEquals } from "@std/assert";
import { isDeepStrictEqual } from "node:util";
import type { AnyComputation } from "../../../lib/basics/mod.ts";
import { houseGeometry } from "../../../lib/house/mod.ts";
import { type AnyChapter, type ChapterResults, CHAPTERS } from "../../../lib/study/chapters.ts";
import { startRun, type Study, type StudyRun } from "../../../lib/study/mod.ts";
import { openBase, openChanged, VALUE_KEYS } from "../../harness/every_field.ts";

/** What is recomputed after a change of one key, worked out by hand from what each chapter needs. */
const BY_HAND: Readonly<Record<string, string>> = {
  "study.title": "",
  "place.name": "",
  "place.latitude": "climate soil house store",
  "place.horizon.elevation": "house store",
  "soil.moisture": "soil house store",
  "house.glazing": "house store worth",
  "house.footingDepth": "headers worth",
  "house.heaterPower": "house worth",
  "tubes.slope": "tubes headers worth",
  "tubes.depth": "soil tubes headers store worth",
  "tubes.spacing": "tubes headers fan store worth",
  "tubes.length": "tubes headers fan store worth",
  "headers.diameter": "headers fan store worth",
  "fan.note": "",
  "fan.filterDirty": "fan",
  "store.chargeStart": "store",
  "store.collector.area": "store worth",
  "store.collector.absorptance": "store",
  "worth.years": "worth",
  "measured.step": "measured",
};

/** Keys that change no sum: names, remarks, and the mending of a year in which nothing is shifted. */
const FRAME = ["place.name", "climate.mendShift", "fan.note"];

/** Measures on the house, which the worth chapter asks for: none, so that no year is run for them. */
const NO_MEASURES: AnyComputation = { after: [], takes: () => null, compute: () => [] };

/**
 * The chapters, counted; house and store, which take seconds, give the base's results, the store
 * without its hours so that the cache holds all of them, the house with the geometry of its inputs.
 */
function counted(base: ChapterResults, computed: string[]): ReadonlyMap<string, AnyComputation> {
  const short: Readonly<Record<string, (taken: never) => unknown>> = {
    house: ({ inputs }: { readonly inputs: Study["house"] }) => ({
      ...base.house,
      geometry: houseGeometry(inputs),
    }),
    store: () => ({ ...base.store, year: null, noFan: null, backupYear: null, sections: null }),
  };
  const chapters = CHAPTERS.map((one: AnyChapter): [string, AnyComputation] => [one.name, {
    after: one.after,
    takes: one.takes as AnyComputation["takes"],
    compute: ((taken: never) => {
      computed.push(one.name);
      return (short[one.name] ?? one.compute as (taken: never) => unknown)(taken);
    }) as AnyComputation["compute"],
  }]);
  return new Map([...chapters, ["ranking", NO_MEASURES]]);
}

async function takenBy(run: StudyRun): Promise<ReadonlyMap<string, unknown>> {
  const results = { ...await run.results(), ranking: [] };
  return new Map(
    CHAPTERS.map(({ name, takes }) => [name, takes(run.study as never, results as never)]),
  );
}

Deno.test("a changed key of the study file recomputes the chapters that take it, and no other", async () => {
  // Property: each of the keys changed alone; what each chapter takes is compared by value, apart
  // from the hashes the run goes by
  const cacheFolder = await Deno.makeTempDir();
  try {
    const study = await openBase();
    const computed: string[] = [];
    const computations = counted(await startRun(study, { cacheFolder: null }).results(), computed);
    const before = await takenBy(startRun(study, { cacheFolder, computations }));
    assertEquals(computed.sort(), CHAPTERS.map(({ name }) => String(name)).sort());
    assert(VALUE_KEYS.length > 100, `only ${VALUE_KEYS.length} keys`);
    for (const key of VALUE_KEYS) {
      computed.length = 0;
      const changed = await openChanged(key);
      const after = await takenBy(startRun(changed, { cacheFolder, computations }));
      const expected = CHAPTERS.map(({ name }) => String(name))
        .filter((name) => !isDeepStrictEqual(after.get(name), before.get(name)));
      assertEquals(computed.sort(), [...expected].sort(), key);
      if (key in BY_HAND) assertEquals(expected.join(" "), BY_HAND[key], key);
      const framed = key.startsWith("study.") || FRAME.includes(key);
      assertEquals(expected.length === 0, framed, `${key}: ${expected.join(" ")}`);
    }
  } finally {
    await Deno.remove(cacheFolder, { recursive: true });
  }
});

Deno.test("a changed key takes nothing stale from the cache", async () => {
  // Property: with the cache of another study at hand the figures are those of a run without one
  const cacheFolder = await Deno.makeTempDir();
  try {
    // up to the store: what it is worth asks for the settled years of every measure as well; the soil
    // moves every chapter, and with it the reduced slices that are kept apart from the chapters
    const upToStore = CHAPTERS.map(({ name }) => name).filter((name) => name !== "worth");
    const beforeStore = upToStore.filter((name) => name !== "store" && name !== "measured");
    await startRun(await openBase(), { cacheFolder }).only(upToStore).results();
    const cases = [
      ["soil.moisture", upToStore],
      ["house.leakage", beforeStore],
      ["fan.speed", beforeStore],
    ] as const;
    for (const [key, chapters] of cases) {
      const changed = await openChanged(key);
      const kept = await startRun(changed, { cacheFolder }).only(chapters).figures();
      const anew = await startRun(changed, { cacheFolder: null }).only(chapters).figures();
      assertEquals(kept, anew, key);
    }
  } finally {
    await Deno.remove(cacheFolder, { recursive: true });
  }
});
