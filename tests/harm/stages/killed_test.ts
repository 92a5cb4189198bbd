// Property: killed anywhere, what was finished is there or computed again, to the same bytes.
import { assert, assertEquals } from "@std/assert";
import { join } from "node:path";
import { diskCache } from "winterground/study/run/cache.ts";
import { headLine, openRows, readRows } from "winterground/study/sweep/mod.ts";
import { inTemporary } from "../../harness/in_temporary.ts";
import { noteTrials } from "../test_attacks.ts";
import { COLUMNS, FINISHED, goOn, lineOf } from "./rows.ts";

const PROGRAM = new URL("work_and_die.ts", import.meta.url).pathname;

/** Runs the program; false where it was killed. */
async function lives(what: string, folder: string, call: number): Promise<boolean> {
  const { code, signal, stderr } = await new Deno.Command(Deno.execPath(), {
    args: ["run", "-A", "--no-check", PROGRAM, what, folder, String(call)],
    stdin: "null",
    stderr: "piped",
  }).output();
  assert(code === 0 || signal === "SIGKILL", new TextDecoder().decode(stderr));
  return signal === null;
}

/** Kills at one call after another, each in a folder of its own, two side by side. */
async function killEverywhere(
  what: string,
  home: string,
  check: (folder: string) => Promise<void>,
): Promise<number> {
  let [next, ended] = [1, false];
  const lane = async () => {
    while (!ended) {
      const call = next++;
      const folder = join(home, String(call));
      if (await lives(what, folder, call)) ended = true;
      else await check(folder);
    }
  };
  const lanes = await Promise.allSettled([lane(), lane()]);
  for (const lane of lanes) if (lane.status === "rejected") throw lane.reason;
  return next - 2;
}

async function filesIn(folder: string): Promise<Record<string, string>> {
  const files: Record<string, string> = {};
  for await (const { name } of Deno.readDir(folder)) {
    files[name] = String(await Deno.readFile(join(folder, name)));
  }
  return files;
}

Deno.test("a sweep killed at any call goes on to the same bytes, and keeps what it had finished", () =>
  inTemporary(async (home) => {
    await goOn(join(home, "whole"));
    const whole = await filesIn(join(home, "whole"));
    const calls = await killEverywhere("rows", home, async (folder) => {
      const file = join(folder, "rows.csv");
      const before = (await readRows(file, COLUMNS)).rows;
      for (const [row, line] of before) assertEquals(line, lineOf(row));
      await goOn(folder);
      const after = await filesIn(folder);
      for (const [name, bytes] of Object.entries(whole)) assertEquals(after[name], bytes, name);
      const others = Object.keys(after).filter((name) => !(name in whole));
      assert(others.every((name) => name.endsWith(".part")), others.join());
    });
    assert(calls > 15, `only ${calls} calls were tried`);
    await noteTrials(
      calls,
      `a sweep killed with SIGKILL at each of ${calls} calls to the file system`,
    );
  }));

Deno.test("a table of rows cut at any byte, or ended by zeros, goes on to the same bytes", () =>
  inTemporary(async (folder) => {
    const text = [headLine(COLUMNS), ...FINISHED.map(lineOf), ""].join("\n");
    const path = join(folder, "rows.csv");
    for (let length = 0; length <= text.length; length++) {
      for (const zeros of [0, 40]) {
        await Deno.writeTextFile(path, text.slice(0, length) + "\0".repeat(zeros));
        const rows = await openRows(path, COLUMNS);
        for (const row of FINISHED) if (!rows.done.has(row)) rows.add(lineOf(row));
        rows.close();
        assertEquals(await Deno.readTextFile(path), text, `cut at ${length}, ${zeros} zeros`);
      }
    }
    await noteTrials(2 * (text.length + 1), `rows cut at each of ${text.length + 1} bytes`);
  }));

Deno.test("a cache killed at any call gives right results, and what it left goes in its time", () =>
  inTemporary(async (home) => {
    const calls = await killEverywhere("cache", home, async (folder) => {
      const cache = diskCache(folder);
      for (const key of ["one", "two"]) {
        const result = await cache.get(key, () => ({ key, values: [1, 2] }));
        assertEquals(result, { key, values: [1, 2] });
      }
      await Deno.mkdir(folder, { recursive: true });
      // a clock that was set on, or back, keeps no dead piece alive
      for (const years of [-1, 1]) {
        const moment = new Date(Date.now() + years * 365 * 86_400_000);
        const piece = join(folder, `${crypto.randomUUID()}.part`);
        await Deno.writeTextFile(piece, "x");
        for await (const { name } of Deno.readDir(folder)) {
          if (name.endsWith(".part")) await Deno.utime(join(folder, name), moment, moment);
        }
        await cache.get(`other ${years}`, () => 1);
        const left = Object.keys(await namesIn(folder)).filter((name) => name.endsWith(".part"));
        assertEquals(left, []);
      }
    });
    assert(calls > 5, `only ${calls} calls were tried`);
    await noteTrials(calls, `the cache killed at each of ${calls} calls, clock set on and back`);
  }));

/** Names in a folder. */
async function namesIn(folder: string): Promise<Record<string, true>> {
  const names = await Array.fromAsync(Deno.readDir(folder));
  return Object.fromEntries(names.map(({ name }) => [name, true as const]));
}
