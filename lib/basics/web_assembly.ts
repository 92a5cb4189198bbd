/**
 * Inner loops in WebAssembly: a module compiled once, and arrays put where it reaches them. It adds two
 * numbers at once where plain code adds one; both give the same bits.
 *
 * @module
 */

/** Arrays by name. */
export type PlacedArrays = Readonly<Record<string, Float64Array | Int32Array>>;

/** Bytes of a register and of a page of memory. */
const REGISTER = 16;
const PAGE = 65536;

/**
 * A module, compiled when it is first asked for; null where WebAssembly is missing or forbidden, as by the
 * policy of a page.
 *
 * @param binary the module, base64
 */
export function compiledModule(binary: string): () => WebAssembly.Module | null {
  let compiled: WebAssembly.Module | null | undefined;
  return () => {
    if (compiled !== undefined) return compiled;
    try {
      const bytes = Uint8Array.from(atob(binary), (letter) => letter.charCodeAt(0));
      compiled = new WebAssembly.Module(bytes);
    } catch {
      compiled = null;
    }
    return compiled;
  };
}

/**
 * Starts a module over arrays: they stand one after another in a memory of their own, each at the start of
 * a register, and the module finds them by their `byteOffset`.
 *
 * @param module imports its memory as "shared" "memory"
 * @param wanted arrays with what they begin with
 * @returns what the module exports, and the arrays in its memory
 */
export function startedOver<Exports, Wanted extends PlacedArrays>(
  module: WebAssembly.Module,
  wanted: Wanted,
): { readonly run: Exports; readonly placed: Wanted } {
  const names = Object.keys(wanted);
  let bytes = 0;
  const places = names.map((name) => {
    const place = bytes;
    bytes += Math.ceil(wanted[name]!.byteLength / REGISTER) * REGISTER;
    return place;
  });
  const memory = new WebAssembly.Memory({ initial: Math.ceil(bytes / PAGE) });
  const placed = Object.fromEntries(names.map((name, k) => {
    const given = wanted[name]!;
    const array = given instanceof Int32Array
      ? new Int32Array(memory.buffer, places[k], given.length)
      : new Float64Array(memory.buffer, places[k], given.length);
    array.set(given);
    return [name, array];
  }));
  const { exports } = new WebAssembly.Instance(module, { shared: { memory } });
  return { run: exports as unknown as Exports, placed: placed as unknown as Wanted };
}
