import { assert, assertEquals, assertMatch, assertStringIncludes } from "@std/assert";
import { join } from "node:path";
import { PLAIN_COLUMNS, plainYear } from "../harness/climate_files.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import { writeSmallStudy } from "../harness/small_study.ts";
import { task } from "../harness/task.ts";

async function study(folder: string, ...args: readonly string[]) {
  const env = { TMPDIR: folder, WINTERGROUND_CACHE: join(folder, "cache") };
  const { code, stdout, stderr } = await task("study", args, folder, { env }).output();
  const [out, err] = [stdout, stderr].map((bytes) => new TextDecoder().decode(bytes));
  return { code, out: out!, err: err! };
}

/** All files below a folder. */
function* filesBelow(folder: string): Generator<string> {
  for (const { name, isDirectory } of Deno.readDirSync(folder)) {
    if (isDirectory) yield* filesBelow(join(folder, name));
    else yield join(folder, name);
  }
}

Deno.test("study --verify says identical of an untouched run, and what differs of a touched one", async () => {
  // Property: a climate's run, with its notebook and report, is the same to the byte from another place
  await inTemporary(async (folder) => {
    const own = join(folder, "own");
    await Deno.mkdir(own);
    const path = await writeSmallStudy(own);
    const first = await study(folder, path, "--chapters", "1", "--out", join(folder, "first"));
    assertEquals(first.code, 0, first.err);
    await Deno.remove(own, { recursive: true });
    for (const file of filesBelow(join(folder, "first"))) {
      const text = new TextDecoder().decode(await Deno.readFile(file));
      assert(!text.includes(folder), `${file} names a folder of this machine`);
    }
    const kept = join(folder, "somewhere else");
    await Deno.rename(join(folder, "first"), kept);
    const same = await study(folder, "--verify", kept);
    assertEquals(same.code, 0, same.out + same.err);
    assertMatch(same.out, /^identical: \d+ files/m);

    // every input, one byte; the run is not even started
    const inputs = [...filesBelow(join(kept, "inputs"))];
    assertEquals(inputs.length, 2);
    for (const file of inputs) {
      const bytes = await Deno.readFile(file);
      await Deno.writeFile(file, bytes.with(bytes.length - 1, bytes.at(-1)! ^ 1));
      const { code, out } = await study(folder, "--verify", kept);
      assertEquals(code, 3, out);
      assertStringIncludes(out, `${file.slice(kept.length + 1)}: changed since the run wrote it`);
      assert(!out.includes("running again"));
      await Deno.writeFile(file, bytes);
    }

    // a result touched up, with hashes to match
    const results = join(kept, "results.json");
    const text = await Deno.readTextFile(results);
    const figures = JSON.parse(text).figures;
    const warmer = figures["climate.coldestHour"].value + 5;
    const changed = text.replace(
      `"value": ${figures["climate.coldestHour"].value}`,
      `"value": ${warmer}`,
    );
    assert(changed !== text);
    await Deno.writeTextFile(results, changed);
    const told = await study(folder, "--verify", kept);
    assertEquals(told.code, 3, told.err);
    assertStringIncludes(told.out, "results.json: changed since the run wrote it");
    assertMatch(told.out, /again against kept: 1 of \d+ figures changed/);
    assertMatch(told.out, /climate\.coldestHour .*−5\.0\sK/);
    assertStringIncludes(told.out, "results.json: other bytes");
    assert(!told.out.includes("figures, inputs and notices are the same"), told.out);
    assert(!/report\.html|\.ipynb|hourly/.test(told.out.split("running again")[1]!), told.out);
    assertEquals(
      [...Deno.readDirSync(folder)].map(({ name }) => name).sort(),
      ["cache", "somewhere else"],
    );
  });
});

/** The demo on hourly weather read by a columns file, with fan curves of its own: every kind of input. */
async function writeStudyOfAllInputs(folder: string): Promise<string> {
  const data = new URL("../../data/", import.meta.url);
  const place = (name: string) => join(folder, name);
  await Deno.writeTextFile(place("year.csv"), `${plainYear().join("\n")}\n`);
  await Deno.writeTextFile(place("columns.yaml"), PLAIN_COLUMNS);
  await Deno.copyFile(new URL("fans/fans.csv", data), place("fans.csv"));
  await Deno.copyFile(new URL("prices/harrow-bend.csv", data), place("prices.csv"));
  for (const { name } of Deno.readDirSync(new URL("logs/harrow-bend", data))) {
    await Deno.copyFile(new URL(`logs/harrow-bend/${name}`, data), place(name));
  }
  const demo = await Deno.readTextFile(new URL("studies/demo/harrow-bend.yaml", data));
  const text = demo
    .replace(/^ {2}normals: .*$/m, "  file: year.csv\n  columns: columns.yaml")
    .replace(/^ {2}seed: .*\n/m, "")
    .replace(/^fan:$/m, "fan:\n  curves: fans.csv")
    .replaceAll(/\.\.\/\.\.\/(?:prices\/harrow-bend|logs\/harrow-bend\/([\w-]+))\.(csv|yaml)/g, (
      _,
      log: string | undefined,
      ending: string,
    ) => `${log ?? "prices"}.${ending}`);
  await Deno.writeTextFile(place("all.yaml"), text);
  return place("all.yaml");
}

Deno.test("study --verify names the input of which one byte was changed, whatever kind it is", async () => {
  // Property: study, weather, columns, fan curves, prices, log map, logs, truth, faults, forecast
  await inTemporary(async (folder) => {
    const own = join(folder, "own");
    await Deno.mkdir(own);
    const path = await writeStudyOfAllInputs(own);
    const kept = join(folder, "kept");
    const first = await study(folder, path, "--chapters", "1", "--out", kept);
    assertEquals(first.code, 0, first.err);
    const inputs = [...filesBelow(join(kept, "inputs"))].map((one) => one.slice(kept.length + 1));
    assertEquals(
      inputs.map((one) => one.replace("inputs/", "")).sort(),
      [...Deno.readDirSync(own)].map(({ name }) => name).sort(),
    );
    for (const input of inputs) {
      const file = join(kept, input);
      const bytes = await Deno.readFile(file);
      const middle = Math.floor(bytes.length / 2);
      await Deno.writeFile(file, bytes.with(middle, bytes[middle]! ^ 1));
      const { code, out } = await study(folder, "--verify", kept);
      assertEquals([code, out.trim().split("\n")], [3, [
        `${input}: changed since the run wrote it`,
        "differs: an input is not what was run; nothing was run again",
      ]]);
      await Deno.writeFile(file, bytes);
    }
  });
});
