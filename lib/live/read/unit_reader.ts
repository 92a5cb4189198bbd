/** Units read by a table, where a page has no unit library: the same names, prefixes and spelling. @module */

/**
 * A unit: its size in base units, its dimensions (zeros at the end left out), which prefixes it takes,
 * and its zero in base units.
 */
export type UnitRow = readonly [
  size: number,
  dimensions: readonly number[],
  prefixes: number,
  zero: number,
];

/** Units by name, and the sets of prefixes with what each multiplies by. */
export interface UnitTable {
  readonly units: Readonly<Record<string, UnitRow>>;
  readonly prefixes: readonly Readonly<Record<string, number>>[];
}

/** Base units: mass, length, time and so on. */
export const DIMENSIONS = 9;

/** What stands for a value with its unit. */
export interface ReadUnit {
  /** The value in another unit; throws where that is of another kind. */
  toNumber(unit: string): number;
}

/** A product of powers of units. */
interface Product {
  readonly size: number;
  readonly dimensions: readonly number[];
  /** of a thermometer's scale, in base units; 0 unless it is one unit alone */
  readonly zero: number;
}

interface Factor {
  readonly row: UnitRow;
  readonly prefix: number;
  readonly power: number;
}

const PART = /\s*(?:([A-Za-z][A-Za-z0-9]*)(?:\s*\^\s*([+-]?\d+(?:\.\d+)?))?|([*/()]))/y;

function found({ units, prefixes }: UnitTable, name: string): Omit<Factor, "power"> {
  const plain = Object.hasOwn(units, name) ? units[name] : undefined;
  if (plain !== undefined) return { row: plain, prefix: 1 };
  for (const [unit, row] of Object.entries(units)) {
    if (!name.endsWith(unit)) continue;
    const set = prefixes[row[2]]!;
    const before = name.slice(0, name.length - unit.length);
    if (Object.hasOwn(set, before)) return { row, prefix: set[before]! };
  }
  throw new SyntaxError(`Cannot read the unit "${name}"`);
}

/** The factors of a unit; a stroke divides by the one unit or bracket behind it. */
function factorsOf(table: UnitTable, text: string): Factor[] {
  const refused = new SyntaxError(`Cannot read the unit "${text}"`);
  const factors: Factor[] = [];
  const brackets: number[] = [];
  let sign = 1;
  let awaited = true;
  PART.lastIndex = 0;
  for (let at = 0; text.slice(at).trim() !== ""; at = PART.lastIndex) {
    const part = PART.exec(text);
    if (part === null) throw refused;
    const [, name, power, mark] = part;
    if (name !== undefined) {
      const outer = brackets.reduce((product, one) => product * one, 1);
      factors.push({ ...found(table, name), power: outer * sign * Number(power ?? 1) });
    } else if (mark === "(") brackets.push(sign);
    else if (awaited || (mark === ")" && brackets.pop() === undefined)) throw refused;
    awaited = mark !== undefined && mark !== ")";
    sign = mark === "/" ? -1 : 1;
  }
  if (awaited || brackets.length > 0 || factors.length === 0) throw refused;
  return factors;
}

function product(factors: readonly Factor[]): Product {
  const [first] = factors;
  const alone = factors.length === 1 && first!.power === 1;
  return {
    size: factors.reduce((size, { row, prefix, power }) => size * (row[0] * prefix) ** power, 1),
    dimensions: Array.from(
      { length: DIMENSIONS },
      (_, k) => factors.reduce((sum, { row, power }) => sum + (row[1][k] ?? 0) * power, 0),
    ),
    zero: alone ? first!.row[3] : 0,
  };
}

/**
 * Reader of values with units.
 *
 * @param table of units
 */
export function unitReader(table: UnitTable): (value: number, unit: string) => ReadUnit {
  return (value, unit) => {
    const from = product(factorsOf(table, unit));
    return {
      toNumber(name) {
        const to = product(factorsOf(table, name));
        if (
          to.dimensions.some((dimension, k) => Math.abs(dimension - from.dimensions[k]!) > 1e-12)
        ) {
          throw new RangeError(`Cannot turn "${unit}" into "${name}"`);
        }
        return (value * from.size + (from.zero - to.zero)) / to.size;
      },
    };
  };
}
