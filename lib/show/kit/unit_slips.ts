/** Numbers that would be right with another unit behind them. @module */
import { type Kind, parseQuantity } from "../../units/mod.ts";

/** A wrong unit behind a right number. */
export interface UnitSlip {
  /** ratio of what was written to the answer */
  readonly factor: number;
  /** names both units and the quantity */
  readonly hint: string;
}

/** Pairs of units that are taken for each other, by the kind of the answer, as they are read and named. */
const TAKEN_FOR: Partial<Record<Kind, readonly (readonly [one: string, other: string])[]>> = {
  length: [["ft", "m"], ["cm", "m"], ["mm", "m"], ["inch", "ft"], ["inch", "cm"]],
  energy: [["MJ", "kWh"], ["kBtu", "kWh"], ["Wh", "kWh"], ["kBtu", "MJ"]],
  power: [["kBtu/h", "kW"], ["W", "kW"], ["W", "hp"]],
  pressure: [["Pa", "inH2O"], ["Pa", "kPa"], ["Pa", "hPa"]],
  conductance: [["Btu/(h degF)", "W/K"], ["W/K", "kW/K"]],
  transmittance: [["Btu/(h ft2 degF)", "W/(m2 K)"]],
  time: [["h", "d"], ["min", "h"], ["d", "week"], ["s", "h"]],
  degreeDays: [["K h", "K d"], ["degF d", "K d"]],
  angle: [["rad", "deg"]],
};

/**
 * What comes out where one unit is taken for another.
 *
 * @param kind of the answer
 * @param asked the quantity, as the hint names it
 */
export function unitSlips(kind: Kind, asked: string): readonly UnitSlip[] {
  if (kind === "share") {
    return [
      { factor: 100, hint: `Too large: write the number for ${asked} with a % behind it.` },
      { factor: 1 / 100, hint: `Too small: the number for ${asked} is no per cent as it stands.` },
    ];
  }
  const size = (unit: string) => parseQuantity(`1 ${unit}`, kind);
  return (TAKEN_FOR[kind] ?? []).flatMap(([one, other]) =>
    [[one, other], [other, one]].map(([meant, written]) => ({
      factor: size(written!) / size(meant!),
      hint: `It looks as if ${meant} were taken for ${written}: check the units of ${asked}.`,
    }))
  );
}
