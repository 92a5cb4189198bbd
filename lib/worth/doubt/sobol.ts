/** Points of Sobol' that fill a space evenly. @module */
import { uniformInt } from "pure-rand/distribution/uniformInt";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { readDataTable, requireInRange } from "../../basics/mod.ts";
import table from "../../../data/points/sobol_directions.csv" with { type: "text" };

/** Bits of a coordinate. */
const BITS = 30;

/** Direction numbers of each column, the highest bit first. */
const DIRECTIONS: readonly Int32Array[] = [
  Int32Array.from({ length: BITS }, (_, bit) => 1 << (BITS - 1 - bit)),
  ...readDataTable(table, "data/points/sobol_directions.csv", ["polynomial", "direction_numbers"])
    .map((row) => directions(row.number("polynomial"), numbers(row.text("direction_numbers")))),
];

/** Columns that points are known for. */
export const SOBOL_COLUMNS: number = DIRECTIONS.length;

function numbers(text: string): readonly number[] {
  return text.split(" ").map(Number);
}

/** Direction numbers by the recurrence of a primitive polynomial. */
function directions(polynomial: number, first: readonly number[]): Int32Array {
  const degree = first.length;
  const found = new Int32Array(BITS);
  for (let bit = 0; bit < BITS; bit++) {
    if (bit < degree) {
      found[bit] = first[bit]! << (BITS - 1 - bit);
      continue;
    }
    let next = found[bit - degree]! ^ (found[bit - degree]! >>> degree);
    for (let power = 1; power < degree; power++) {
      if ((polynomial >> (degree - power)) & 1) next ^= found[bit - power]!;
    }
    found[bit] = next;
  }
  return found;
}

/**
 * Points of Sobol' in the order of a Gray code, each column shifted by chance bit by bit, which keeps
 * them even. Best where the count is a power of two.
 *
 * Source: Joe & Kuo 2008 [joe-kuo-2008] for the direction numbers.
 *
 * @param count number of points
 * @param columns number of inputs, {@link SOBOL_COLUMNS} at most
 * @param seed whole number of the shift; 0 for the plain sequence, which starts in the corner
 * @returns rows of shares, 0 up to but not 1
 */
export function sobolPoints(count: number, columns: number, seed: number): number[][] {
  requireInRange("number of points", count, 1, 1e7, "points");
  requireInRange("number of columns", columns, 1, SOBOL_COLUMNS, "columns");
  const source = xoroshiro128plus(seed);
  const state = Int32Array.from(
    { length: columns },
    () => seed === 0 ? 0 : uniformInt(source, 0, 2 ** BITS - 1),
  );
  return Array.from({ length: count }, (_, place) => {
    if (place > 0) {
      const bit = 31 - Math.clz32(place & -place);
      for (let column = 0; column < columns; column++) {
        state[column]! ^= DIRECTIONS[column]![bit]!;
      }
    }
    return Array.from(state, (value) => value / 2 ** BITS);
  });
}
