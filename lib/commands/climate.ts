/**
 * `deno task climate FILE [--columns FILE]`: reads, checks and summarises one climate file.
 *
 * @module
 */
import { summariseClimate } from "../climate/mod.ts";
import { climateReport } from "../study/climate_report.ts";
import { loadClimateFile } from "../study/climate_source.ts";
import type { CommandSpec } from "./command_line.ts";
import { runCommand, say } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "climate",
  summary: "Reads one climate file, checks it and prints a summary of its months.",
  args: "FILE",
  minArgs: 1,
  maxArgs: 1,
  options: [{
    name: "columns",
    value: "FILE",
    meaning: "how to read a file of another layout (docs/climate.md)",
  }],
};

/** The summary of one climate file as text. */
async function summaryText(file: string, columns: string | undefined): Promise<string> {
  const { year } = await loadClimateFile(file, columns);
  const result = summariseClimate(year);
  const seen = new Set<string>();
  const notices = [...year.notices, ...result.notices].filter(({ text }) => {
    const fresh = !seen.has(text);
    seen.add(text);
    return fresh;
  });
  return climateReport(year, result, notices);
}

if (import.meta.main) {
  await runCommand(SPEC, async ({ args, values }) => {
    say((await summaryText(args[0]!, values.columns)).trimEnd());
  });
}
