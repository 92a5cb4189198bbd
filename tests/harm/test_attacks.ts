/** Attacks that are tests, with as many trials as the task asks for. @module */
import { join } from "node:path";
import { PROJECT_FOLDER, say } from "winterground/commands/terminal.ts";
import type { AttackRow, StageAttacks } from "./reliability_page.ts";

/** An attack and the tests that make it. */
export interface TestAttack {
  /** its name */
  readonly attack: string;
  /** its tests, below the folder of the project */
  readonly files: readonly string[];
}

const RESULTS_KILLED = "SIGKILL at any call: results folder";
const ROWS_KILLED =
  "SIGKILL at any call: rows of a sweep, cache; torn files; clock set on and back";
const DISKS = "full and read-only disk";
const COMMANDS =
  "signals, two at once, full and read-only disk, clock: sweep, compare, publish, log reading";

/** All of them. */
export const TEST_ATTACKS: readonly TestAttack[] = [
  {
    attack: "random legal studies through the chapters",
    files: ["tests/harm/legal/legal_test.ts"],
  },
  { attack: "a millionth in every number", files: ["tests/harm/legal/continuity_test.ts"] },
  {
    attack: "hostile text in studies, prices, fans, logs, sweeps, notebooks, runs, file names",
    files: ["tests/harm/hostile_text_test.ts"],
  },
  { attack: "odd studies: no number that is none", files: ["tests/harm/odd_outputs_test.ts"] },
  { attack: "impossible weather", files: ["tests/harm/impossible_weather_test.ts"] },
  {
    attack: RESULTS_KILLED,
    files: ["tests/commands/output/killed_test.ts"],
  },
  {
    attack: ROWS_KILLED,
    files: ["tests/harm/stages/killed_test.ts"],
  },
  { attack: DISKS, files: ["tests/harm/stages/disk_test.ts"] },
  { attack: "two runs at once into one folder", files: ["tests/commands/output/stage_test.ts"] },
  {
    attack: COMMANDS,
    files: ["tests/harm/stages/commands_test.ts"],
  },
  { attack: "SIGINT and SIGTERM: study", files: ["tests/commands/study_test.ts"] },
  { attack: "inputs found before", files: ["tests/harm/found_test.ts"] },
];

/** Which attack cuts off which stage of the work. */
export const STAGES: readonly StageAttacks[] = [
  {
    stage: "study, results folder",
    attacks: [
      "SIGINT and SIGTERM: study",
      RESULTS_KILLED,
      "two runs at once into one folder",
      DISKS,
      DISKS,
      "",
    ],
  },
  { stage: "cache", attacks: ["", ROWS_KILLED, "", DISKS, DISKS, ROWS_KILLED] },
  { stage: "log reading", attacks: [COMMANDS, COMMANDS, "", "", "", ""] },
  { stage: "sweep", attacks: [COMMANDS, ROWS_KILLED, COMMANDS, COMMANDS, COMMANDS, COMMANDS] },
  { stage: "publish", attacks: [COMMANDS, RESULTS_KILLED, COMMANDS, COMMANDS, COMMANDS, ""] },
  { stage: "compare", attacks: [COMMANDS, RESULTS_KILLED, COMMANDS, COMMANDS, COMMANDS, ""] },
];

/** Variable by which tests are told to try all there is, and the file they note their trials in. */
export const WHOLE = "WINTERGROUND_HARM_TRIALS";

/** Notes what a test has tried, for the page. */
export async function noteTrials(trials: number, words: string): Promise<void> {
  const file = Deno.env.get(WHOLE);
  if (file === undefined) return;
  await Deno.writeTextFile(file, `${JSON.stringify({ trials, words })}\n`, { append: true });
}

/** Characters of failing tests that are told. */
const MOST_TOLD = 20_000;

/** What the test runner says of the tests that failed, and nothing of the others. */
function failuresOf(output: string): string {
  const from = output.indexOf("\n ERRORS ");
  return output.slice(from < 0 ? 0 : from).slice(-MOST_TOLD);
}

/** Runs the tests of an attack; what failed is told on the terminal. */
export async function testAttack({ attack, files }: TestAttack): Promise<Omit<AttackRow, "when">> {
  const notes = await Deno.makeTempFile();
  const { code, stdout } = await new Deno.Command(Deno.execPath(), {
    args: ["test", "-A", "--no-check", ...files.map((file) => join(PROJECT_FOLDER, file))],
    env: { NO_COLOR: "1", [WHOLE]: notes },
    stdin: "null",
  }).output();
  const lines = (await Deno.readTextFile(notes)).split("\n").filter((line) => line !== "");
  await Deno.remove(notes);
  const noted = lines.map((line) => JSON.parse(line) as { trials: number; words: string });
  const output = new TextDecoder().decode(stdout);
  const [, passed = "0", failed = "0", ignored = "0"] =
    /(\d+) passed.* \| (\d+) failed(?: \| (\d+) ignored)?/.exec(output) ?? [];
  const found = Math.max(Number(failed), code === 0 ? 0 : 1);
  if (found > 0) say(failuresOf(output));
  const left = ignored === "0" ? "" : `, ${ignored} not tried here`;
  return {
    attack,
    tried: noted.reduce((sum, { trials }) => sum + trials, 0) || Number(passed) + Number(failed),
    seeds: "",
    found,
    words: [`${passed} tests passed${left}`, ...noted.map(({ words }) => words)].join("; "),
  };
}
