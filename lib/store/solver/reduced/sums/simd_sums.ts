/** The sums of the reduced step in WebAssembly, two lanes to a register. @module */
import { compiledModule, startedOver } from "../../../../basics/mod.ts";
import { addAlone, advanceAlone } from "./lane_alone.ts";
import type { Sums } from "./layout.ts";
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

/** Bytes of a value. */
const VALUE = 8;

const sumsModule = compiledModule(SUMS_BINARY);

/** Sums in WebAssembly; null where that is missing or forbidden. */
export function simdSums(): Sums | null {
  const module = sumsModule();
  if (module === null) return null;
  let run: SumsExports | undefined;
  return {
    place: (wanted) => {
      if (run !== undefined) throw new RangeError("Cannot place arrays twice for the same sums");
      const started = startedOver<SumsExports, typeof wanted>(module, wanted);
      run = started.run;
      return started.placed;
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
