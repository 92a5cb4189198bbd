/** The alternating-direction step as the engine takes it: in WebAssembly, or in plain code. @module */
import { compiledModule, type PlacedArrays, startedOver } from "../../../basics/mod.ts";
import type { ConductionOperator } from "../../ground/operator.ts";
import { ADI_BINARY } from "./adi_binary.ts";
import type { AdiFactors } from "./factors.ts";
import { adiKernel } from "./kernel.ts";

/** A step over arrays that it has placed. */
export interface AdiKernel {
  /** Puts arrays where the step reaches them: zeros, or what is given. Once for each of these. */
  place<Wanted extends PlacedArrays>(wanted: Wanted): Wanted;
  /** {@link adiKernel}; factors as the kernel reads them, field and scratch must have been placed. */
  step(
    operator: ConductionOperator,
    factors: AdiFactors,
    field: Float64Array,
    start: number,
    work: Float64Array,
  ): void;
}

/** What adi.wat exports; places are bytes. */
interface AdiExports {
  step(
    across: number,
    along: number,
    columnNext: number,
    field: number,
    work: number,
    columns: number,
    rows: number,
  ): void;
}

/** Bytes of a value. */
const VALUE = 8;

const adiModule = compiledModule(ADI_BINARY);

/** The step in WebAssembly; null where that is missing or forbidden. */
export function simdAdi(): AdiKernel | null {
  const module = adiModule();
  if (module === null) return null;
  let run: AdiExports | undefined;
  return {
    place: (wanted) => {
      if (run !== undefined) throw new RangeError("Cannot place arrays twice for the same step");
      const started = startedOver<AdiExports, typeof wanted>(module, wanted);
      run = started.run;
      return started.placed;
    },
    step: ({ columns, rows }, { across, along, columnNext }, field, start, work) =>
      run!.step(
        across.byteOffset,
        along.byteOffset,
        columnNext.byteOffset,
        field.byteOffset + start * VALUE,
        work.byteOffset,
        columns,
        rows,
      ),
  };
}

/** The step in plain code, over arrays wherever they are. */
export function plainAdi(): AdiKernel {
  return { place: (wanted) => wanted, step: adiKernel };
}
