/**
 * `deno task climate FILE [--columns FILE] [--against FILE2]`: reads, checks and summarises one
 * climate file, or sets two side by side.
 *
 * @module
 */
import type { Notice } from "../basics/mod.ts";
import { climateQuality, compareClimates, summariseClimate } from "../climate/mod.ts";
import type { ClimateYear } from "../climate/mod.ts";
import { climateReport, comparisonReport } from "../study/results/climate_report.ts";
import { loadClimateFile } from "../study/file/climate_source.ts";
import type { CommandSpec } from "./command_line.ts";
import { CommandFailure, runCommand, say } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "climate",
  summary: "Reads a climate file, checks it and prints a monthly summary.",
  args: "FILE",
  minArgs: 1,
  maxArgs: 1,
  options: [
    {
      name: "columns",
      value: "FILE",
      meaning: "columns file for another layout (docs/climate-files.md)",
    },
    {
      name: "against",
      value: "FILE2",
      meaning: "compare with a second file instead, one line per figure",
    },
    {
      name: "against-columns",
      value: "FILE",
      meaning: "columns file for the second file, if its layout is not recognised",
    },
  ],
};

/** The summary of one climate file as text. */
async function summaryText(file: string, columns: string | undefined): Promise<string> {
  const { year } = await loadClimateFile(file, columns);
  const result = summariseClimate(year);
  return climateReport(year, result, eachOnce([...year.notices, ...result.notices]));
}

/** Two climate files side by side as text. */
async function comparisonText(
  first: { readonly file: string; readonly columns: string | undefined },
  second: { readonly file: string; readonly columns: string | undefined },
): Promise<string> {
  const a = (await loadClimateFile(first.file, first.columns)).year;
  const b = (await loadClimateFile(second.file, second.columns)).year;
  const notices = [...noticesOf(a, "A"), ...noticesOf(b, "B")];
  return comparisonReport([a, b], compareClimates(a, b), notices);
}

function noticesOf(year: ClimateYear, name: string): Notice[] {
  return eachOnce([...year.notices, ...climateQuality(year).notices])
    .map((notice) => ({ ...notice, text: `${name}: ${notice.text}` }));
}

function eachOnce(notices: readonly Notice[]): Notice[] {
  const seen = new Set<string>();
  return notices.filter(({ text }) => {
    const fresh = !seen.has(text);
    seen.add(text);
    return fresh;
  });
}

if (import.meta.main) {
  await runCommand(SPEC, async ({ args, values }) => {
    const file = args[0]!;
    const { columns, against } = values;
    const againstColumns = values["against-columns"];
    if (against === undefined && againstColumns !== undefined) {
      throw new CommandFailure("--against-columns needs --against FILE2", 2);
    }
    const text = against === undefined
      ? await summaryText(file, columns)
      : await comparisonText({ file, columns }, { file: against, columns: againstColumns });
    say(text.trimEnd());
  });
}
