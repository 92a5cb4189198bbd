/**
 * Runs every attack whole and writes docs/reliability.md:
 * `deno run -A tests/harm/run.ts WORDS COUNT SEED`. Ends with status 1 where something was found.
 */
import { join } from "node:path";
import { PROJECT_FOLDER, say } from "winterground/commands/terminal.ts";
import { attackReaders } from "./fuzz/attack.ts";
import { findingsText } from "./fuzz/fuzz.ts";
import { type AttackRow, reliabilityPage } from "./reliability_page.ts";
import { TEST_ATTACKS, testAttack } from "./test_attacks.ts";

const PAGE = join(PROJECT_FOLDER, "docs", "reliability.md");

async function readerRows(count: number, seed: number): Promise<AttackRow[]> {
  const rows: AttackRow[] = [];
  await attackReaders(seed, count, (tally) => {
    const { reader, tried, read, refused, withLine, findings, slowest, seeds } = tally;
    say(`${reader}: ${tried} tried, ${read} read, ${refused} refused, ${findings.length} found`);
    if (findings.length > 0) say(findingsText([tally]));
    rows.push({
      attack: reader,
      tried,
      seeds: tried === 0 ? "" : `${seeds.first} to ${seeds.last}`,
      found: findings.length,
      words: tried === 0
        ? "not tried: its data are not here"
        : `${read} read, ${refused} refused (${withLine} with a line for every fault); slowest ` +
          `${Math.round(slowest.time)} ms (seed ${slowest.seed})`,
    });
  });
  return rows;
}

async function gitWords(...args: string[]): Promise<string> {
  const { stdout } = await new Deno.Command("git", { args, cwd: PROJECT_FOLDER }).output()
    .catch(() => ({ stdout: new Uint8Array(0) }));
  return new TextDecoder().decode(stdout).trim();
}

const [only = "", count = "20000", seed = "1"] = Deno.args;
const wanted = (name: string) => name.includes(only);
const start = performance.now();
const readers = wanted("fuzz of readers") ? await readerRows(Number(count), Number(seed)) : [];
const others: AttackRow[] = [];
for (const attack of TEST_ATTACKS) {
  if (!wanted(attack.attack)) continue;
  const row = await testAttack(attack);
  say(`${row.attack}: ${row.words}`);
  others.push(row);
}
const minutes = (performance.now() - start) / 60_000;
if (only === "") {
  await Deno.writeTextFile(
    PAGE,
    reliabilityPage({
      readers,
      others,
      date: new Date().toISOString().slice(0, 10),
      commit: await gitWords("rev-parse", "--short=10", "HEAD") || "unknown",
      changed: await gitWords("status", "--porcelain", "lib", "data") !== "",
      command: `deno task harm --count ${count} --seed ${seed}`,
      minutes,
    }),
  );
  say(`written: ${PAGE}`);
}
const found = [...readers, ...others].reduce((sum, row) => sum + row.found, 0);
say(`${found} found in ${minutes.toFixed(1)} minutes`);
Deno.exit(found > 0 ? 1 : 0);
