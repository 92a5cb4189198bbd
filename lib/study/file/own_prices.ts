/** The price list that a study names. @module */
import { type PriceList, readPriceList } from "../../worth/mod.ts";
import { requireNamedFiles, resolveBeside } from "./named_files.ts";
import { type GivenFile, readGiven } from "./given_file.ts";
import { textAt, type YamlSource } from "./yaml_source.ts";

/** Prices of a study. */
export interface LoadedPrices {
  /** the list; null where the study names none */
  readonly prices: PriceList | null;
  /** texts that belong to the study's inputs */
  readonly texts: readonly string[];
  /** files they were read from */
  readonly files: readonly GivenFile[];
}

/**
 * Reads the price list that a study names in `worth.prices`, relative to the study file.
 *
 * @throws {InputError} where the file is missing or faulty
 */
export async function loadPrices(source: YamlSource): Promise<LoadedPrices> {
  const named = textAt(source, ["worth", "prices"]);
  if (named === undefined) return { prices: null, texts: [], files: [] };
  const path = resolveBeside(source, named);
  await requireNamedFiles(source, [{ key: ["worth", "prices"], path }]);
  const { text, file } = await readGiven(path, "price list", "table", {
    by: "worth.prices",
    name: named,
  });
  return { prices: readPriceList(text, named), texts: [text], files: [file] };
}
