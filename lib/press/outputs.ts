// deno-lint-ignore-file camelcase -- the names of the notebook format
/**
 * From messages of the output channel to the outputs of a cell, and the count of what must be
 * there.
 *
 * @module
 */
import type { MediaBundle, Output } from "./notebook.ts";
import type { WireMessage } from "./wire.ts";

/** Collects the outputs of one cell; neighbouring pieces of one stream are joined. */
export function collectOutputs(messages: readonly WireMessage[], executionCount: number): Output[] {
  const outputs: Output[] = [];
  const places = new Map<string, number>();
  for (const { header, content } of messages) {
    const id = displayId(content);
    const known = id === undefined ? undefined : places.get(id);
    if (header.msg_type === "update_display_data") {
      const shown = known === undefined ? undefined : outputs[known];
      if (shown?.output_type === "display_data") shown.data = content.data as MediaBundle;
      continue;
    }
    if (header.msg_type === "clear_output") {
      outputs.length = 0;
      places.clear();
      continue;
    }
    const output = toOutput(header.msg_type ?? "", content, executionCount);
    if (output === undefined) continue;
    const last = outputs.at(-1);
    if (
      output.output_type === "stream" && last?.output_type === "stream" && last.name === output.name
    ) {
      last.text += output.text;
      continue;
    }
    outputs.push(output);
    if (id !== undefined) places.set(id, outputs.length - 1);
  }
  return outputs;
}

function toOutput(
  type: string,
  content: Readonly<Record<string, unknown>>,
  execution_count: number,
): Output | undefined {
  const data = content.data as MediaBundle;
  const metadata = (content.metadata ?? {}) as Record<string, unknown>;
  switch (type) {
    case "display_data":
      return { output_type: "display_data", data, metadata };
    case "execute_result":
      return { output_type: "execute_result", data, metadata, execution_count };
    case "stream":
      return { output_type: "stream", name: String(content.name), text: String(content.text) };
    case "error":
      return {
        output_type: "error",
        ename: String(content.ename),
        evalue: String(content.evalue),
        traceback: (content.traceback as unknown[] ?? []).map(String),
      };
    default:
      return undefined;
  }
}

function displayId(content: Readonly<Record<string, unknown>>): string | undefined {
  const transient = content.transient as Record<string, unknown> | null | undefined;
  return typeof transient?.display_id === "string" ? transient.display_id : undefined;
}

/** Running numbers the notebook's `show` gave its outputs. */
export function showNumbers(messages: readonly WireMessage[]): number[] {
  return messages.flatMap(({ content }) => {
    const transient = content.transient as Record<string, unknown> | null | undefined;
    return typeof transient?.winterground === "number" ? [transient.winterground] : [];
  });
}

/** The calls `await show(` in the code of a cell, comments and texts left aside. */
export function countShows(code: string): number {
  return [...blankTexts(code).matchAll(/\bawait\s+show\s*\(/g)].length;
}

/**
 * The code with comments and the inside of texts replaced by blanks of the same length; the quotes
 * of texts stay.
 */
export function blankTexts(code: string): string {
  const pattern =
    /\/\/[^\n]*|\/\*[\s\S]*?\*\/|"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|`(?:\\.|[^`\\])*`/g;
  return code.replace(pattern, (part) => {
    const blank = part.replace(/[^\n]/g, " ");
    return part.startsWith("/") ? blank : part[0] + blank.slice(1, -1) + part.at(-1);
  });
}
