/** The price list that a study names. @module */
import { type PriceList, readPriceList } from "../../worth/mod.ts";
import { requireNamedFiles, resolveBeside } from "./named_files.ts";
import { readTextFile } from "./read_text.ts";
import { textAt, type YamlSource } from "./yaml_source.ts";

/** Prices of a study. */
export interface LoadedPrices {
  /** the list; null where the study names none */
  readonly prices: PriceList | null;
  /** texts that belong to the study's inputs */
  readonly texts: readonly string[];
}

/**
 * Reads the price list that a study names in `worth.prices`, relative to the study file.
 *
 * @throws {InputError} where the file is missing or faulty
 */
export async function loadPrices(source: YamlSource): Promise<LoadedPrices> {
  const named = textAt(source, ["worth", "prices"]);
  if (named === undefined) return { prices: null, texts: [] };
  const path = resolveBeside(source, named);
  await requireNamedFiles(source, [{ key: ["worth", "prices"], path }]);
  const text = await readTextFile(path, "price list", "table");
  return { prices: readPriceList(text, named), texts: [text] };
}
