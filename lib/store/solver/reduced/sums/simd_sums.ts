/** The sums of the reduced step in WebAssembly, two lanes to a register. @module */
import { addAlone, advanceAlone } from "./lane_alone.ts";
import type { Placed, Sums } from "./layout.ts";
import { SUMS_BINARY } from "./sums_binary.ts";

/** What sums.wat exports; lengths and places are bytes. */
interface SumsExports {
  addRows(
    matrix: number,
    width: number,
    rows: number,
    count: number,
    from: number,
    to: number,
    listed: number,
    listedCount: number,
    vector: number,
    out: number,
  ): void;
  advance(x: number, added: number, decay: number, growth: number, states: number): void;
}

/** Bytes of a value, of a register, of a page of memory. */
const VALUE = 8;
const REGISTER = 16;
const PAGE = 65536;

let compiled: WebAssembly.Module | null | undefined;

/** The compiled module; null where WebAssembly is missing or forbidden, as a page's policy may do. */
function sumsModule(): WebAssembly.Module | null {
  if (compiled !== undefined) return compiled;
  try {
    compiled = new WebAssembly.Module(
      Uint8Array.from(atob(SUMS_BINARY), (letter) => letter.charCodeAt(0)),
    );
  } catch {
    compiled = null;
  }
  return compiled;
}

/** The arrays one after another in a memory of their own, each at the start of a register. */
function placedIn<Wanted extends Placed>(wanted: Wanted): [WebAssembly.Memory, Wanted] {
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
  return [memory, placed as unknown as Wanted];
}

/** Sums in WebAssembly; null where that is missing or forbidden. */
export function simdSums(): Sums | null {
  const module = sumsModule();
  if (module === null) return null;
  let run: SumsExports | undefined;
  return {
    place: (wanted) => {
      if (run !== undefined) throw new RangeError("Cannot place arrays twice for the same sums");
      const [memory, placed] = placedIn(wanted);
      const instance = new WebAssembly.Instance(module, { sums: { memory } });
      run = instance.exports as unknown as SumsExports;
      return placed;
    },
    addRows: (rows, given, vector, start, out, outStart, lanes) => {
      if (lanes === 1) return addAlone(rows, given, vector, start, out, outStart);
      run!.addRows(
        rows.matrix.byteOffset,
        given.width * VALUE,
        rows.listed.byteOffset,
        rows.count,
        given.from,
        given.to,
        given.listed.byteOffset,
        given.count,
        vector.byteOffset + start * VALUE,
        out.byteOffset + outStart * VALUE,
      );
    },
    advance: (move, added, x, start, lanes) => {
      const { decay, growth } = move;
      if (lanes === 1) return advanceAlone(move, added, x, start);
      run!.advance(
        x.byteOffset + start * VALUE,
        added.byteOffset,
        decay.byteOffset,
        growth.byteOffset,
        decay.length,
      );
    },
  };
}
