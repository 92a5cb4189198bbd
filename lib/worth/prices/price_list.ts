/**
 * Price lists: CSV files that the user edits.
 *
 * @module
 */
import { type DataRow, InputError, readDataTable } from "../../basics/mod.ts";

/** Price of one thing. */
export interface Price {
  /** id of the quantity it is for */
  readonly id: string;
  /** for one unit, in the list's currency; 0 where the list says that it costs nothing */
  readonly price: number;
  /** unit that is priced, such as "m", "m2", "h" */
  readonly unit: string;
  /** years until the thing is bought again; null where it lasts */
  readonly life: number | null;
  /** day on which the price was read, as the list writes it */
  readonly date: string;
  /** where the price comes from */
  readonly source: string;
  /** line of the file where it stands */
  readonly line: number;
}

/** All prices of a study. */
export interface PriceList {
  /** name of the file for messages */
  readonly file: string;
  /** currency of every price, such as "EUR" */
  readonly currency: string;
  /** in file order */
  readonly prices: readonly Price[];
}

const COLUMNS = ["id", "price", "unit", "currency", "life_years", "date", "source"] as const;

/**
 * Reads a price list: one line a thing; columns id, price, unit, currency, life_years (empty where the
 * thing lasts), date, source. Other columns are for the reader.
 *
 * @param content CSV text
 * @param file name shown in messages
 * @throws {InputError} with file, line and column of the first fault
 */
export function readPriceList(content: string, file: string): PriceList {
  const rows = readDataTable(content, file, COLUMNS);
  const currency = rows[0]!.text("currency");
  const seen = new Map<string, number>();
  const prices = rows.map((row) => {
    const fail = (message: string, column: string): never => {
      throw new InputError(message, { file, line: row.line, column });
    };
    const id = row.text("id");
    if (id === "") fail("Cannot leave the id empty", "id");
    const before = seen.get(id);
    if (before !== undefined) fail(`Cannot price "${id}" twice: line ${before} has it too`, "id");
    seen.set(id, row.line);
    if (row.text("currency") === "" || row.text("currency") !== currency) {
      fail(
        `Cannot mix currencies: line ${rows[0]!.line} has "${currency}", this one ` +
          `"${row.text("currency")}"`,
        "currency",
      );
    }
    return readPrice(row, id, fail);
  });
  return { file, currency, prices };
}

function readPrice(
  row: DataRow,
  id: string,
  fail: (message: string, column: string) => never,
): Price {
  const price = row.number("price");
  if (price < 0) fail(`Cannot use the price ${price}: expected 0 or more`, "price");
  const life = row.numberOrNull("life_years");
  if (life !== null && !(life > 0)) {
    fail(`Cannot use a life of ${life} years: expected more than 0, or nothing`, "life_years");
  }
  const [unit, date, source] = (["unit", "date", "source"] as const).map((column) => {
    const text = row.text(column);
    return text === "" ? fail(`Cannot leave the ${column} empty`, column) : text;
  });
  return { id, price, unit: unit!, life, date: date!, source: source!, line: row.line };
}

/** A unit as it is compared: m² and m2 are one. */
function plainUnit(unit: string): string {
  return unit.replaceAll("²", "2").replaceAll("³", "3").replace(/^per /, "").trim();
}

/**
 * Price of a quantity.
 *
 * @param list prices of the study
 * @param id of the quantity
 * @param unit in which the quantity is measured
 * @returns null where the list has none
 * @throws {InputError} with file and line where the list prices another unit
 */
export function findPrice(list: PriceList, id: string, unit: string): Price | null {
  const found = list.prices.find((price) => price.id === id);
  if (found === undefined) return null;
  if (plainUnit(found.unit) !== plainUnit(unit)) {
    throw new InputError(
      `Cannot use the price of "${id}": it is for one ${found.unit}, expected for one ${unit}`,
      { file: list.file, line: found.line, column: "unit" },
    );
  }
  return found;
}
