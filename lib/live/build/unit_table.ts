/** The units of the unit library as a page carries them. @module */
import type { Fraction, MathJsInstance, MathNumericType } from "mathjs";
import inOneFile from "mathjs/lib/browser/math.js";
import { withUnit } from "../../units/unit_library.ts";
import type { UnitRow, UnitTable } from "../read/unit_reader.ts";

/** A unit as the library keeps it; sizes may be fractions. */
interface KeptUnit {
  readonly value: MathNumericType;
  readonly offset: MathNumericType;
  /** what it measures */
  readonly base: { readonly key: string };
  readonly dimensions: readonly number[];
  readonly prefixes: Readonly<Record<string, { readonly value: number }>>;
}

const mathematics: Pick<MathJsInstance, "number" | "subtract" | "multiply" | "fraction"> =
  inOneFile;

/** Zero of a thermometer's scale, K above that of Celsius: in fractions, so that it is exact. */
function zeroOf({ value, offset, base }: KeptUnit): number {
  if (base.key !== "TEMPERATURE") return 0;
  const { number, subtract, multiply, fraction } = mathematics;
  const [size, zero] = [value, offset].map((one) => fraction(one as number));
  return number(subtract(multiply(size!, zero!), fraction(273.15)) as Fraction);
}

/** Places of the base units in which no column of weather is: ampere, candela, mole, bit. */
const NEVER = [3, 5, 6, 8];

/** Its units with their prefixes, those that the trade adds among them, but none that no weather has. */
export function unitTable(): UnitTable {
  withUnit(1, "m"); // the trade's units are added when that is loaded
  const { UNITS } = (inOneFile as unknown as {
    readonly Unit: { readonly UNITS: Readonly<Record<string, KeptUnit>> };
  }).Unit;
  const sets: string[] = [];
  const wanted = Object.entries(UNITS)
    .filter(([, { dimensions }]) => NEVER.every((place) => dimensions[place] === 0));
  const units = wanted.map(([name, unit]): [string, UnitRow] => {
    const factors = Object.entries(unit.prefixes).map(([prefix, { value }]) => [prefix, value]);
    const set = JSON.stringify(Object.fromEntries(factors));
    const known = sets.indexOf(set);
    const place = known < 0 ? sets.push(set) - 1 : known;
    const last = unit.dimensions.findLastIndex((power) => power !== 0);
    return [name, [Number(unit.value), unit.dimensions.slice(0, last + 1), place, zeroOf(unit)]];
  });
  return {
    units: Object.fromEntries(units),
    prefixes: sets.map((set) => JSON.parse(set)),
  };
}
