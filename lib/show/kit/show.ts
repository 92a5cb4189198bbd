/**
 * The one way a notebook cell shows something.
 *
 * @module
 */

import { inReadersOrder } from "./reader.ts";

/** What is shown: one entry a media type; "text/plain" is always there. */
export interface ShownItem {
  /** plain text, for terminals and screen readers */
  readonly "text/plain": string;
  /** HTML fragment */
  readonly "text/html"?: string;
  /** other media types */
  readonly [mediaType: string]: string | undefined;
}

/** The part of the kernel's interface used here. */
interface KernelDisplay {
  broadcast(type: string, content: Record<string, unknown>): Promise<void>;
}

/** Outputs sent by this kernel so far; lets the press notice a lost one. */
let sent = 0;

/**
 * Shows items below the current cell, one output an item, or a text as it is; outside a kernel the
 * plain text goes to standard output. Always `await` it, as the last statement of a cell.
 *
 * The kernel sends outputs and its "done" through separate writers and loses an output that is
 * still under way when the cell ends, or gives it to the next cell where that waits already; the
 * pauses, longer for larger outputs and after the last, keep them apart.
 *
 * @example
 * ```ts
 * import { show } from "./show.ts";
 *
 * await show({ "text/plain": "damping depth 2.46 m" });
 * ```
 *
 * @param items what to show, in this order
 * @throws {TypeError} when there is nothing to show
 */
export async function show(...items: readonly (ShownItem | string)[]): Promise<void> {
  if (items.length === 0) throw new TypeError("Cannot show nothing: give at least one item");
  const kernel = currentKernel();
  for (const item of items) {
    const data = inOrder(typeof item === "string" ? { "text/plain": item } : item);
    if (kernel === undefined) {
      await Deno.stdout.write(new TextEncoder().encode(`${data["text/plain"]}\n`));
      continue;
    }
    sent++;
    const transient = { winterground: sent };
    await kernel.broadcast("display_data", { data, metadata: {}, transient });
    const size = Object.values(data).reduce((sum, text) => sum + (text?.length ?? 0), 0);
    await new Promise((done) => setTimeout(done, pauseAfter(size)));
  }
  if (kernel !== undefined) await new Promise((done) => setTimeout(done, AFTER_LAST));
}

/** ms more after the last output: a busy machine hands it on late. */
const AFTER_LAST = 30;

/** What chapters wrote in SI first, in the order of the reader. */
function inOrder(item: ShownItem): ShownItem {
  const entries = Object.entries(item).map(([type, text]) => [
    type,
    text === undefined || type.startsWith("image/") ? text : inReadersOrder(text),
  ]);
  return Object.fromEntries(entries) as ShownItem;
}

/** Pause after an output of `size` characters, ms. */
function pauseAfter(size: number): number {
  return 10 + size / 20_000;
}

/** The kernel this code runs in; asking for it throws where there is none. */
function currentKernel(): KernelDisplay | undefined {
  try {
    return Deno.jupyter as unknown as KernelDisplay;
  } catch {
    return undefined;
  }
}
