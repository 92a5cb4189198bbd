/** Reads results.json of a finished run back. @module */
import { z } from "zod";
import { InputError } from "../../basics/mod.ts";
import type { LogTexts } from "../../measured/types.ts";
import { toldLogs } from "../results/told_logs.ts";
import type { ResultsFile } from "../results/write_results.ts";

const FIGURE = z.object({
  value: z.union([z.number(), z.string(), z.null()]),
  unit: z.string(),
  label: z.string(),
  low: z.number().optional(),
  high: z.number().optional(),
  provisional: z.literal(true).optional(),
});

const RESULTS = z.object({
  study: z.object({
    name: z.string(),
    title: z.string(),
    author: z.string(),
    question: z.string(),
    units: z.enum(["SI", "US"]).default("SI"), // runs before there was a choice
  }),
  inputs: z.record(z.string(), z.unknown()),
  provenance: z.object({
    studyHash: z.string(),
    climateHash: z.string(),
    library: z.object({ version: z.string(), hash: z.string() }),
    commit: z.string().nullable().optional(),
    lockHash: z.string().nullable().optional(),
    deno: z.string(),
    time: z.string(),
    files: z.record(z.string(), z.string()).optional(),
    command: z.array(z.string()).optional(),
  }),
  chapters: z.array(z.string()).optional(),
  figures: z.record(z.string().regex(/^[a-z]+\.\w+$/), FIGURE),
  notices: z.array(z.object({
    level: z.enum(["info", "warning", "caution"]),
    chapter: z.string(),
    text: z.string(),
  })),
});

/**
 * The results of a run from the text of its results.json.
 *
 * @param text content of the file
 * @param file its path, for messages
 * @throws {InputError} where it is no such file, with the place in it that is not as expected
 */
export function readResults(text: string, file: string): ResultsFile {
  let content: unknown;
  try {
    content = JSON.parse(text);
  } catch (error) {
    throw new InputError(
      `Cannot read the results: it is not JSON (${
        (error as Error).message
      }); name the folder of a finished run`,
      { file },
    );
  }
  const read = RESULTS.safeParse(content);
  if (read.success) return withToldLogs(read.data as ResultsFile);
  const { path, message } = read.error.issues[0]!;
  throw new InputError(
    `Cannot read the results: ${path.length === 0 ? "the file" : path.join(".")} is not as a run ` +
      `writes it (${message}); run the study again`,
    { file },
  );
}

const TEXT = z.object({ name: z.string(), text: z.string() });
const TEXTS = z.object({
  texts: z.object({
    map: TEXT,
    logs: z.array(TEXT),
    truth: TEXT.optional(),
    plantedFaults: TEXT.optional(),
    forecast: TEXT.optional(),
  }),
});

/** Earlier versions wrote the whole texts of the logs, which no comparison should print. */
function withToldLogs(results: ResultsFile): ResultsFile {
  const read = TEXTS.safeParse(results.inputs.measured);
  if (!read.success) return results;
  const texts = toldLogs(read.data.texts as LogTexts, []);
  const measured = { ...results.inputs.measured as object, texts };
  return { ...results, inputs: { ...results.inputs, measured } };
}
