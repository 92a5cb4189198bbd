/** Fans a study may choose from: those of data/fans and those of a file of the user's own. @module */
import { InputError } from "../../basics/mod.ts";
import { type FanCurve, FANS, findFan, readFans } from "../../fan/mod.ts";
import { type GivenFile, readGiven } from "./given_file.ts";
import { requireNamedFiles, resolveBeside } from "./named_files.ts";
import { textAt, type YamlSource } from "./yaml_source.ts";

/** Fans of a study. */
export interface LoadedFans {
  /** curves of the user's file, null where the study names none */
  readonly own: readonly FanCurve[] | null;
  /** all fans to choose from, the user's first */
  readonly all: readonly FanCurve[];
  /** texts that belong to the study's inputs */
  readonly texts: readonly string[];
  /** files they were read from */
  readonly files: readonly GivenFile[];
}

/**
 * Reads the fan curves that a study names in `fan.curves`, relative to the study file.
 *
 * @throws {InputError} where the file is missing or faulty
 */
export async function loadFans(source: YamlSource): Promise<LoadedFans> {
  const curves = textAt(source, ["fan", "curves"]);
  if (curves === undefined) return { own: null, all: FANS, texts: [], files: [] };
  const path = resolveBeside(source, curves);
  await requireNamedFiles(source, [{ key: ["fan", "curves"], path }]);
  const { text, file } = await readGiven(path, "file of fan curves", "table", {
    by: "fan.curves",
    name: curves,
  });
  const own = readFans(text, path);
  return { own, all: [...own, ...FANS], texts: [text], files: [file] };
}

/** Refuses a `fan.fan` that is not among those to choose from. */
export function checkFanId(source: YamlSource, fans: readonly FanCurve[]): readonly InputError[] {
  const fan = textAt(source, ["fan", "fan"]);
  if (fan === undefined) return [];
  try {
    findFan(fan, fans);
    return [];
  } catch (error) {
    const text = `Cannot use "fan.fan": ${(error as Error).message}`;
    return [new InputError(text, source.locate(["fan", "fan"]))];
  }
}
