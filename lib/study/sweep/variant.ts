/** A study with other values for some keys. @module */
import { isMap, parseDocument } from "yaml";
import { InputError } from "../../basics/mod.ts";
import type { RowValues, SweptKey } from "./types.ts";

/**
 * Text of the study file with some values changed; comments and the other values stay.
 *
 * @param text of the study file
 * @param keys what is changed
 * @param values one for each key
 * @throws {InputError} where a value has no place: its section is "none", or a list is too short
 */
export function variantText(
  text: string,
  keys: readonly Pick<SweptKey, "key" | "path">[],
  values: RowValues,
): string {
  const document = parseDocument(text);
  keys.forEach(({ key, path }, place) => {
    for (let depth = 1; depth < path.length; depth++) {
      const above = path.slice(0, depth);
      const node = document.getIn(above, true);
      const inList = typeof path[depth] === "number";
      if (inList ? document.hasIn(path.slice(0, depth + 1)) : node === undefined || isMap(node)) {
        continue;
      }
      throw new InputError(
        `"${key}" has no place in this study: "${above.join(".")}" is ${
          node === undefined ? "not there" : inList ? "too short" : String(node)
        }`,
      );
    }
    document.setIn(path, document.createNode(values[place]));
  });
  return document.toString({ lineWidth: 0 });
}
