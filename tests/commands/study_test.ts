import { assert, assertEquals, assertMatch, assertStringIncludes } from "@std/assert";
import { join } from "node:path";
import { hourlyCsv, startRun } from "winterground/study/mod.ts";
import { openSmallStudy, wellBuilt, writeSmallStudy } from "../harness/small_study.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import { task } from "../harness/task.ts";
import { pagesBelow } from "../press/page_faults.ts";
import { runningKernels } from "../press/tiny.ts";

/** Starts the command in a folder of its own, which is also its folder for temporary files. */
function start(
  folder: string,
  args: readonly string[],
  environment: Readonly<Record<string, string>> = {},
): Deno.ChildProcess {
  return task("study", args, folder, { env: { TMPDIR: folder, ...environment } }).spawn();
}

function names(folder: string): string[] {
  return [...Deno.readDirSync(folder)].map((entry) => entry.name);
}

Deno.test("study ends with status 2 on wrong use and bad input, before any kernel starts", async () => {
  // Property: exit status, message with file and line, nothing written
  await inTemporary(async (folder) => {
    await Deno.writeTextFile(
      join(folder, "bad.yaml"),
      "study:\n  name: x\nhouze:\n  length: 3 m\n",
    );
    const cases: [string[], RegExp][] = [
      [["--climat", "x.csv"], /did you mean "--climate"/],
      [["missing.yaml"], /^missing\.yaml: Cannot find/m],
      [["bad.yaml"], /^bad\.yaml:3:\d+: .*houze.*house/m],
      [["--chapters", "77"], /no notebook 77/],
      [["--quick", "--pdf"], /--quick writes no pages/],
      [["--quick", "--chapters", "1"], /--quick runs no notebooks/],
      [["--verify", "out", "--quick"], /--verify takes everything from the folder/],
      [["--verify", "out"], /^out\/results\.json: Cannot find/m],
      [["--cell-limit", "soon"], /--cell-limit "soon"/],
      [["--climate", "none.csv"], /none\.csv/],
    ];
    await Promise.all(cases.map(async ([args, message]) => {
      const { code, stderr } = await start(folder, args).output();
      const text = new TextDecoder().decode(stderr);
      assertMatch(text, message);
      assertEquals(code, 2, text);
    }));
    assertEquals(names(folder), ["bad.yaml"]);
  });
});

Deno.test("study interrupted leaves no kernel, no temporary file and no half-written result", async () => {
  // Property: cleaning up after SIGINT and SIGTERM
  for (const [signal, status] of [["SIGINT", 130], ["SIGTERM", 143]] as const) {
    await inTemporary(async (folder) => {
      const child = start(folder, ["--out", "result", "--chapters", "1-7"]);
      const own = async () =>
        (await runningKernels()).filter((kernel) => kernel.command.includes(folder));
      for (let wait = 0; wait < 2400 && (await own()).length === 0; wait++) {
        await new Promise((done) => setTimeout(done, 50));
      }
      assert((await own()).length > 0, "no kernel was started");
      child.kill(signal);
      const { code, stderr } = await child.output();
      assertEquals(code, status, new TextDecoder().decode(stderr));
      assertEquals(await own(), []);
      assertEquals(names(folder), []);
    });
  }
});

Deno.test("study --help names every option and ends with status 0", async () => {
  // Property: help is there
  const { code, stdout } = await start(Deno.cwd(), ["--help"]).output();
  assertEquals(code, 0);
  for (
    const option of [
      "--climate",
      "--columns",
      "--out",
      "--chapters",
      "--quick",
      "--against",
      "--verify",
      "--exercises",
      "--pdf",
      "--cell-limit",
    ]
  ) {
    assertStringIncludes(new TextDecoder().decode(stdout), option);
  }
});

Deno.test("study --chapters 1 computes and writes the climate alone", async () => {
  // Property: no more than the notebook needs
  await inTemporary(async (folder) => {
    const { code, stdout, stderr } = await start(folder, ["--chapters", "1", "--out", "one"])
      .output();
    assertEquals(code, 0, new TextDecoder().decode(stderr));
    assertMatch(new TextDecoder().decode(stdout), /coldest hour outdoors: /);
    assertEquals(names(join(folder, "one")).sort(), [
      "SHA256SUMS",
      "inputs",
      "notebooks",
      "results.json",
      "tables",
      "workbook.html",
      "written.json",
    ]);
    const pages = await pagesBelow(join(folder, "one"));
    assertEquals([...pages], [[join(folder, "one", "workbook.html"), []]]);
    const file = JSON.parse(await Deno.readTextFile(join(folder, "one", "results.json")));
    assertEquals(file.chapters, ["climate"]);
    const keys = Object.keys(file.figures);
    assert(keys.length > 0 && keys.every((key) => key.startsWith("climate.")), keys.join(" "));
  });
});

Deno.test("study --quick writes the figures and hours of a whole run to every digit, and nothing else", async () => {
  // Property: workers, cache and leaving out the notebooks move nothing
  await inTemporary(async (folder) => {
    const path = await writeSmallStudy(folder, wellBuilt);
    const environment = { WINTERGROUND_CACHE: join(folder, "cache") };
    const { code, stdout, stderr } = await start(
      folder,
      [path, "--quick", "--out", "quick"],
      environment,
    ).output();
    assertEquals(code, 0, new TextDecoder().decode(stderr));
    assertMatch(new TextDecoder().decode(stdout), /annual heat saved by the store: /);
    const written = [
      "SHA256SUMS",
      "hourly.csv",
      "inputs",
      "results.json",
      "tables",
      "written.json",
    ];
    assertEquals(names(join(folder, "quick")).sort(), written);
    const run = startRun(await openSmallStudy(wellBuilt), { cacheFolder: null });
    const file = JSON.parse(await Deno.readTextFile(join(folder, "quick", "results.json")));
    assertEquals(file.figures, JSON.parse(JSON.stringify(await run.figures())));
    assertEquals(file.notices, JSON.parse(JSON.stringify(await run.notices())));
    assertEquals(file.chapters, undefined);
    assertEquals(
      await Deno.readTextFile(join(folder, "quick", "hourly.csv")),
      hourlyCsv(run.study, await run.results()),
    );
    const again = await start(
      folder,
      [path, "--quick", "--out", "quick", "--against", "quick"],
      environment,
    ).output();
    const said = new TextDecoder().decode(again.stdout);
    assertMatch(said, /now against before: 0 of \d+ figures changed/);
    assertEquals(
      names(join(folder, "quick")).sort(),
      [
        ...written,
        "differences.csv",
        "differences.html",
      ].sort(),
    );
    const kept = join(folder, "quick", "inputs", "elsewhere", "earlier-run", "results.json");
    assertEquals(JSON.parse(await Deno.readTextFile(kept)).figures, file.figures);
  });
});
