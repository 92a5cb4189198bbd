/** Units in which values are shown, SI first and US second. @module */
import Papa from "papaparse";
import text from "../../data/display/units.csv" with { type: "text" };

/** How one kind of quantity is shown. */
export interface DisplayUnit {
  /** name of the kind, such as "temperature" */
  readonly kind: string;
  /** SI unit as shown */
  readonly unit: string;
  /** shown value = stored value × factor */
  readonly factor: number;
  /** decimals */
  readonly digits: number;
  /** US unit, null where US use has none of its own */
  readonly us: {
    readonly unit: string;
    readonly factor: number;
    readonly offset: number;
    readonly digits: number;
  } | null;
}

const units = readUnits(text);

function readUnits(csv: string): ReadonlyMap<string, DisplayUnit> {
  const rows = Papa.parse<Record<string, string>>(csv.trim(), { header: true }).data;
  return new Map(rows.map((row) => [row["kind"]!, {
    kind: row["kind"]!,
    unit: row["si_unit"]!,
    factor: Number(row["si_factor"]),
    digits: Number(row["si_digits"]),
    us: row["us_unit"] === "" ? null : {
      unit: row["us_unit"]!,
      factor: Number(row["us_factor"]),
      offset: Number(row["us_offset"]),
      digits: Number(row["us_digits"]),
    },
  }]));
}

/** All kinds known. */
export function displayKinds(): string[] {
  return [...units.keys()];
}

/**
 * The units of a kind.
 *
 * @throws {RangeError} for an unknown kind; the message lists the known ones
 */
export function displayUnit(kind: string): DisplayUnit {
  const found = units.get(kind);
  if (found === undefined) {
    throw new RangeError(
      `Cannot show kind "${kind}": known kinds are ${displayKinds().join(", ")}`,
    );
  }
  return found;
}

/** Number with fixed decimals, thin groups, a true minus sign and no negative zero. */
export function showNumber(value: number, digits: number): string {
  if (!Number.isFinite(value)) return "–";
  const rounded = Math.abs(value).toFixed(digits);
  const [whole, decimals] = rounded.split(".");
  const grouped = whole!.length > 4 ? whole!.replace(/\B(?=(\d{3})+$)/g, "\u202f") : whole!;
  const sign = value < 0 && Number(rounded) !== 0 ? "−" : "";
  return `${sign}${grouped}${decimals === undefined ? "" : `.${decimals}`}`;
}

/** A very small or large number as "−4.5e−14". */
export function showPower(value: number): string {
  return value.toExponential(1).replaceAll("-", "−").replace("+", "");
}

/** "−17.2 degC", with an unbreakable space */
export function showSi(value: number, kind: string, digits?: number): string {
  const unit = displayUnit(kind);
  return withUnit(showNumber(value * unit.factor, digits ?? unit.digits), unit.unit);
}

/** "1.0 degF", or an empty text where US use has no unit of its own */
export function showUs(value: number, kind: string, digits?: number): string {
  const us = displayUnit(kind).us;
  if (us === null) return "";
  return withUnit(showNumber(value * us.factor + us.offset, digits ?? us.digits), us.unit);
}

/** "−17.2 degC (1.0 degF)" */
export function showBoth(value: number, kind: string): string {
  const us = showUs(value, kind);
  return us === "" ? showSi(value, kind) : `${showSi(value, kind)} (${us})`;
}

function withUnit(number: string, unit: string): string {
  return unit === "–" ? number : `${number}\u00a0${unit}`;
}
