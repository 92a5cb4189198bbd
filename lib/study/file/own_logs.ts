/** The logs that a study names. @module */
import { InputError } from "../../basics/mod.ts";
import type { LogTexts } from "../../measured/types.ts";
import { requireNamedFiles, resolveBeside } from "./named_files.ts";
import { type GivenFile, readGiven } from "./given_file.ts";
import type { StudyGiven } from "./schema.ts";
import { textAt, type YamlSource } from "./yaml_source.ts";

/** Keys of single files beside the logs: what made-up logs are graded by, and a forecast. */
const SINGLE = ["truth", "plantedFaults", "forecast"] as const;

/** Logs of a study. */
export interface LoadedLogs {
  /** map and logs; null where the study names none */
  readonly logs: LogTexts | null;
  /** texts that belong to the study's inputs */
  readonly texts: readonly string[];
  /** files they were read from */
  readonly files: readonly GivenFile[];
}

/**
 * Reads the texts of the logs that a study names under `measured`, relative to the study file.
 *
 * @param section the section after the schema; undefined where it is faulty
 * @throws {InputError} where a file is missing or unreadable, or one of map and logs is not named
 */
export async function loadLogs(
  source: YamlSource,
  section: StudyGiven["measured"] | undefined,
): Promise<LoadedLogs> {
  const map = textAt(source, ["measured", "logMap"]);
  const logs = section?.logs ?? [];
  if (map === undefined && logs.length === 0) return { logs: null, texts: [], files: [] };
  if (map === undefined || logs.length === 0) {
    const [there, wanted] = map === undefined ? ["logs", "logMap"] : ["logMap", "logs"];
    throw new InputError(
      `"measured.${there}" is given without "measured.${wanted}": a log map says which column of ` +
        "which file holds which sensor, and the logs are the files; give both or neither",
      source.locate(["measured", there]),
    );
  }
  const named = [
    { key: ["measured", "logMap"], name: map, path: resolveBeside(source, map) },
    ...logs.map(({ file }, place) => ({
      key: ["measured", "logs", place, "file"],
      name: file,
      path: resolveBeside(source, file),
    })),
  ];
  await requireNamedFiles(source, named);
  const read = await Promise.all(
    named.map(({ key, name, path }, k) =>
      readGiven(path, k === 0 ? "log map" : "log", k === 0 ? "settings" : "table", {
        by: key.join("."),
        name,
      })
    ),
  );
  const texts = read.map(({ text }) => text);
  const single = SINGLE.flatMap((key) => {
    const name = textAt(source, ["measured", key]);
    return name === undefined ? [] : [{ key, name, path: resolveBeside(source, name) }];
  });
  await requireNamedFiles(
    source,
    single.map(({ key, path }) => ({ key: ["measured", key], path })),
  );
  const beside = await Promise.all(
    single.map(async ({ key, name, path }) =>
      [
        key,
        name,
        await readGiven(path, key === "forecast" ? "forecast" : "file for grading", "table", {
          by: `measured.${key}`,
          name,
        }),
      ] as const
    ),
  );
  return {
    logs: {
      map: { name: map, text: texts[0]! },
      logs: logs.map(({ file }, place) => ({ name: file, text: texts[place + 1]! })),
      ...Object.fromEntries(beside.map(([key, name, { text }]) => [key, { name, text }])),
    },
    texts: [...texts, ...beside.map(([, , { text }]) => text)],
    files: [...read.map(({ file }) => file), ...beside.map(([, , { file }]) => file)],
  };
}
