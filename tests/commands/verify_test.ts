import { assert, assertEquals, assertMatch, assertStringIncludes } from "@std/assert";
import { join } from "node:path";
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
