// deno-lint-ignore-file camelcase -- the names of the notebook format
/**
 * Notebook files: nbformat 4.5, read strictly and written in the layout Jupyter writes.
 *
 * Source: nbformat documentation [nbformat-web], "The Notebook file format", version 4.5 (cell ids
 * by JEP 62 [jep-62-2020]).
 *
 * @module
 */
import { z } from "zod";
import { InputError } from "../basics/mod.ts";

/** Text by media type; JSON media types hold objects. */
export type MediaBundle = Record<string, unknown>;

/** Something shown below a cell, in one or more media types. */
export interface DisplayOutput {
  /** kind of output */
  output_type: "display_data";
  /** what is shown, by media type */
  data: MediaBundle;
  /** free metadata */
  metadata: Record<string, unknown>;
}

/** Value of the last expression of a cell. */
export interface ResultOutput {
  /** kind of output */
  output_type: "execute_result";
  /** what is shown, by media type */
  data: MediaBundle;
  /** free metadata */
  metadata: Record<string, unknown>;
  /** number of the execution */
  execution_count: number | null;
}

/** Text written to a stream. */
export interface StreamOutput {
  /** kind of output */
  output_type: "stream";
  /** "stdout" or "stderr" */
  name: string;
  /** what was written */
  text: string;
}

/** An error that ended the cell. */
export interface ErrorOutput {
  /** kind of output */
  output_type: "error";
  /** name of the error's class */
  ename: string;
  /** message */
  evalue: string;
  /** stack, a line an entry */
  traceback: string[];
}

/** One output of a code cell. */
export type Output = DisplayOutput | ResultOutput | StreamOutput | ErrorOutput;

/** A cell of text. */
export interface TextCell {
  /** kind of cell */
  cell_type: "markdown" | "raw";
  /** identity within the notebook */
  id: string;
  /** free metadata */
  metadata: Record<string, unknown>;
  /** the text */
  source: string;
  /** pictures belonging to the text */
  attachments?: Record<string, MediaBundle> | undefined;
}

/** A cell of code with what it put out. */
export interface CodeCell {
  /** kind of cell */
  cell_type: "code";
  /** identity within the notebook */
  id: string;
  /** free metadata */
  metadata: Record<string, unknown>;
  /** the code */
  source: string;
  /** number of the execution; null before */
  execution_count: number | null;
  /** what the cell put out */
  outputs: Output[];
}

/** A cell. */
export type Cell = TextCell | CodeCell;

/** A notebook; texts are joined, never lists of lines. */
export interface Notebook {
  /** major version of the format */
  nbformat: 4;
  /** minor version of the format, 5 or later */
  nbformat_minor: number;
  /** kernel, language and free metadata */
  metadata: Record<string, unknown>;
  /** cells in order */
  cells: Cell[];
}

/** Text that stands in the file as one text or as a list of lines. */
const text = z.union([z.string(), z.array(z.string())])
  .transform((value) => typeof value === "string" ? value : value.join(""));
const free = z.record(z.string(), z.unknown());
const bundle = free.transform((data) =>
  Object.fromEntries(
    Object.entries(data).map(([type, value]) => [
      type,
      Array.isArray(value) && !isJsonType(type) ? value.join("") : value,
    ]),
  )
);
const count = z.number().int().min(0).nullable();
const output = z.discriminatedUnion("output_type", [
  z.strictObject({ output_type: z.literal("display_data"), data: bundle, metadata: free }),
  z.strictObject({
    output_type: z.literal("execute_result"),
    data: bundle,
    metadata: free,
    execution_count: count,
  }),
  z.strictObject({ output_type: z.literal("stream"), name: z.string(), text }),
  z.strictObject({
    output_type: z.literal("error"),
    ename: z.string(),
    evalue: z.string(),
    traceback: z.array(z.string()),
  }),
]);
const id = z.string().regex(/^[a-zA-Z0-9_-]{1,64}$/);
const textCell = (kind: "markdown" | "raw") =>
  z.strictObject({
    cell_type: z.literal(kind),
    id: id.optional(),
    metadata: free,
    source: text,
    attachments: z.record(z.string(), bundle).optional(),
  });
const cell = z.discriminatedUnion("cell_type", [
  textCell("markdown"),
  textCell("raw"),
  z.strictObject({
    cell_type: z.literal("code"),
    id: id.optional(),
    metadata: free,
    source: text,
    execution_count: count,
    outputs: z.array(output),
  }),
]);
const schema = z.strictObject({
  nbformat: z.literal(4),
  nbformat_minor: z.number().int().min(0),
  metadata: free,
  cells: z.array(cell),
});

/**
 * Reads a notebook; cells without an id (older minor versions) get one by their number.
 *
 * @param content text of the file
 * @param file name of the file, for messages
 * @throws {InputError} when the text is no notebook of format 4, or two cells share an id
 */
export function parseNotebook(content: string, file: string): Notebook {
  let raw: unknown;
  try {
    raw = JSON.parse(content);
  } catch (error) {
    throw new InputError(`Cannot read the notebook: ${(error as Error).message}`, { file });
  }
  const result = schema.safeParse(raw);
  if (!result.success) {
    const issue = result.error.issues[0];
    const path = issue?.path.join(".") ?? "";
    const words = issue?.message.replace("received undefined", "but it is missing");
    throw new InputError(`Cannot read the notebook at "${path}": ${words}`, { file });
  }
  const cells = result.data.cells.map((cell, index) => ({
    ...cell,
    id: cell.id ?? `cell-${index}`,
  }));
  const seen = new Set<string>();
  for (const { id } of cells) {
    if (seen.has(id)) {
      throw new InputError(`Cannot read the notebook: two cells have the id "${id}"`, { file });
    }
    seen.add(id);
  }
  return { ...result.data, nbformat_minor: Math.max(5, result.data.nbformat_minor), cells };
}

/** Writes a notebook as Jupyter does: keys sorted, indented by one space, texts as lists of lines. */
export function formatNotebook(notebook: Notebook): string {
  const cells = notebook.cells.map((cell) => {
    const source = lines(cell.source);
    if (cell.cell_type !== "code") return { ...cell, source };
    return { ...cell, source, outputs: cell.outputs.map(layOutput) };
  });
  return JSON.stringify(sortKeys({ ...notebook, cells }), null, 1) + "\n";
}

/** The notebook with the metadata by which programs know its kernel and language. */
export function withLanguage(
  notebook: Notebook,
  language: Readonly<Record<string, unknown>>,
): Notebook {
  const kernelspec = { display_name: "Deno", language: "typescript", name: "deno" };
  return { ...notebook, metadata: { ...notebook.metadata, kernelspec, language_info: language } };
}

function layOutput(output: Output): Record<string, unknown> {
  if (output.output_type === "stream") return { ...output, text: lines(output.text) };
  if (output.output_type === "error") return { ...output };
  const data = Object.fromEntries(
    Object.entries(output.data).map(([type, value]) => [
      type,
      typeof value === "string" && !isJsonType(type) ? lines(value) : value,
    ]),
  );
  return { ...output, data };
}

function isJsonType(mediaType: string): boolean {
  return mediaType === "application/json" || mediaType.endsWith("+json");
}

/** Splits after each line break, keeping it. */
function lines(value: string): string[] {
  return value === "" ? [] : value.split(/(?<=\n)/);
}

function sortKeys(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sortKeys);
  if (value === null || typeof value !== "object") return value;
  const entries = Object.entries(value).filter(([, item]) => item !== undefined);
  entries.sort(([a], [b]) => a < b ? -1 : 1);
  return Object.fromEntries(entries.map(([key, item]) => [key, sortKeys(item)]));
}
