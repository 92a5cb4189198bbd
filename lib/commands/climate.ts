/**
 * `deno task climate FILE [--columns FILE]`: reads, checks and summarises one climate file.
 *
 * @module
 */
import { resolve } from "node:path";
import { parseArgs } from "node:util";
import { InputError } from "../basics/mod.ts";
import { summariseClimate } from "../climate/mod.ts";
import { loadClimateFile } from "../study/climate_source.ts";
import { climateReport } from "../study/climate_report.ts";

const USAGE = `Usage: deno task climate FILE [--columns FILE]

Reads one climate file, checks it and prints a summary of its months.
--columns FILE  how to read a file of another layout (docs/climate.md)
`;

async function print(text: string): Promise<void> {
  await Deno.stdout.write(new TextEncoder().encode(text));
}

async function complain(text: string): Promise<void> {
  await Deno.stderr.write(new TextEncoder().encode(text.endsWith("\n") ? text : `${text}\n`));
}

interface Wanted {
  readonly file: string;
  readonly columns: string | undefined;
}

/** Reads the command line; relative paths start where the user called the task. */
function readArguments(words: readonly string[]): Wanted | "help" {
  let parsed;
  try {
    parsed = parseArgs({
      args: [...words],
      allowPositionals: true,
      options: { columns: { type: "string" }, help: { type: "boolean", short: "h" } },
    });
  } catch (error) {
    throw new InputError(`${(error as Error).message}\n\n${USAGE}`);
  }
  if (parsed.values.help === true) return "help";
  const [file, ...rest] = parsed.positionals;
  if (file === undefined || rest.length > 0) {
    throw new InputError(`Expected one climate file\n\n${USAGE}`);
  }
  const start = Deno.env.get("INIT_CWD") ?? Deno.cwd();
  const { columns } = parsed.values;
  return {
    file: resolve(start, file),
    columns: columns === undefined ? undefined : resolve(start, columns),
  };
}

/** Runs the command; returns the exit status. */
export async function climateCommand(words: readonly string[]): Promise<number> {
  try {
    const wanted = readArguments(words);
    if (wanted === "help") {
      await print(USAGE);
      return 0;
    }
    const { year } = await loadClimateFile(wanted.file, wanted.columns);
    const result = summariseClimate(year);
    const texts = new Set<string>();
    const notices = [...year.notices, ...result.notices]
      .filter(({ text }) => texts.has(text) ? false : texts.add(text) !== undefined);
    await print(climateReport(year, result, notices));
    return 0;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    await complain(error.message);
    return 2;
  }
}

if (import.meta.main) Deno.exit(await climateCommand(Deno.args));
