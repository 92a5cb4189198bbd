import { assert, assertEquals, assertStringIncludes } from "@std/assert";
import { createHash } from "node:crypto";
import { compareResults, openStudyText, readResults, startRun } from "winterground/study/mod.ts";
import { resultsOf } from "winterground/study/results/write_results.ts";
import { inTemporary } from "../../harness/in_temporary.ts";
import { writeSmallStudy } from "../../harness/small_study.ts";

const LOG = "time,inside\n2026-01-01T00:00:00Z,4.25\n2026-01-01T00:15:00Z,4.5\n";
const MAP = "a map that only the chapter of logs reads\n";

Deno.test("results.json tells logs by name, hash and rows, the same whether texts or files are read", () =>
  inTemporary(async (folder) => {
    // Property: a hash is that of the kept file; no text of a log stands in the results
    const path = await writeSmallStudy(folder);
    const text = `${await Deno.readTextFile(path)}\n` +
      "measured: {logMap: map.yaml, logs: [{file: first.csv}, {file: second.csv}]}\n";
    await Deno.writeTextFile(`${folder}/map.yaml`, MAP);
    await Deno.writeTextFile(`${folder}/first.csv`, LOG);
    await Deno.writeTextFile(`${folder}/second.csv`, `\uFEFF${LOG}\n\n`);
    const study = await openStudyText(text, path);
    const run = startRun(study, { cacheFolder: null });
    const results = await resultsOf(run, new Date(0), ["climate"]);
    const json = JSON.stringify(results);
    assert(!json.includes("4.25"), "a text of a log");
    const files = results.provenance.files!;
    assertEquals((results.inputs.measured as { texts: unknown }).texts, {
      map: { name: "map.yaml", hash: files["inputs/map.yaml"], rows: 1 },
      logs: [
        { name: "first.csv", hash: files["inputs/first.csv"], rows: 3 },
        { name: "second.csv", hash: files["inputs/second.csv"], rows: 3 },
      ],
    });
    assertEquals(files["inputs/first.csv"], createHash("sha256").update(LOG).digest("hex"));

    // what earlier versions wrote
    const { texts } = study.measured;
    const old = { ...results, inputs: { ...results.inputs, measured: study.measured } };
    assertStringIncludes(JSON.stringify(old), "4.25");
    const read = readResults(JSON.stringify(old), "results.json");
    assert(!JSON.stringify(read).includes("4.25"), "a text of a log of an earlier run");
    const plain = { ...texts!, logs: [texts!.logs[0]!] };
    const [before, now] = [{ ...old, inputs: { measured: { texts: plain } } }, {
      ...results,
      inputs: {
        measured: {
          texts: {
            map: { name: "map.yaml", hash: files["inputs/map.yaml"], rows: 1 },
            logs: [{ name: "first.csv", hash: files["inputs/first.csv"], rows: 3 }],
          },
        },
      },
    }].map((one) => readResults(JSON.stringify(one), "results.json"));
    assertEquals(compareResults(before!, now!).inputs, []);
  }));
