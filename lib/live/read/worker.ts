/**
 * The reader of a live page's own weather files: a worker that is started with the first file. Bundled
 * into the page as one script; the files go no further.
 *
 * @module
 */
import { InputError } from "../../basics/mod.ts";
import type { FromReader, ToReader, WeatherTerms } from "../types.ts";
import { ownClimate } from "./own_climate.ts";

const scope = globalThis as unknown as {
  onmessage: ((event: { readonly data: ToReader }) => void) | null;
  postMessage(message: FromReader): void;
};

/** Bytes that a file may have, as where a study names it. */
const LARGEST = 200e6;

async function climateOf(files: readonly File[], terms: WeatherTerms) {
  const read = files.map(async (file) => {
    if (file.size > LARGEST) {
      throw new InputError(`Cannot read the file: it is larger than ${LARGEST / 1e6} MB`, {
        file: file.name,
      });
    }
    return { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) };
  });
  return ownClimate(await Promise.all(read), terms);
}

scope.onmessage = async ({ data: { id, files, terms } }) => {
  try {
    const climate = await climateOf(files, terms);
    scope.postMessage({ type: "weather", id, climate });
  } catch (error) {
    scope.postMessage({ type: "fault", id, message: (error as Error).message });
  }
};
