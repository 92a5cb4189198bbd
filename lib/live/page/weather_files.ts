/** Weather files that a reader picks or drops on the page: read by a worker of their own. @module */
import type { ClimateYear } from "../../climate/types.ts";
import type { FromReader, ToReader, WeatherTerms } from "../types.ts";
import { byId } from "./elements.ts";

/** Who hears of the files. */
export interface WeatherListener {
  reading(names: string): void;
  year(climate: ClimateYear, names: string): void;
  /** they cannot be used; the message says why, a fault a line */
  fault(message: string): void;
}

/** Class of the page while a file is held above it. */
const HELD = "held";

/** The reader of files: its worker starts with the first of them, its last question is answered. */
function reader(
  source: readonly string[],
  terms: WeatherTerms,
  listener: WeatherListener,
): (files: readonly File[]) => void {
  let worker: Worker | undefined;
  let asked: { readonly id: number; readonly names: string } = { id: 0, names: "" };
  const start = () => {
    const address = URL.createObjectURL(new Blob([...source], { type: "text/javascript" }));
    const started = new Worker(address);
    started.onerror = () => listener.fault("This browser cannot read files here.");
    started.onmessage = ({ data }: MessageEvent<FromReader>) => {
      if (data.id !== asked.id) return;
      if (data.type === "weather") listener.year(data.climate, asked.names);
      else listener.fault(data.message);
    };
    return started;
  };
  return (files) => {
    if (files.length === 0) return;
    asked = { id: asked.id + 1, names: files.map(({ name }) => name).join(", ") };
    listener.reading(asked.names);
    worker ??= start();
    const question: ToReader = { id: asked.id, files, terms };
    worker.postMessage(question);
  };
}

/** True where what is dragged are files, not words of the page. */
function holdsFiles({ dataTransfer }: DragEvent): boolean {
  return dataTransfer?.types.includes("Files") === true;
}

/**
 * Listens for files: picked by the page's own control, or dropped anywhere on the page.
 *
 * @param source of the reader's script, which goes behind that of the years
 * @param terms what the study says of its weather
 * @param listener hears of the last files only
 */
export function listenForWeather(
  source: readonly string[],
  terms: WeatherTerms,
  listener: WeatherListener,
): void {
  const read = reader(source, terms, listener);
  const picked = byId<HTMLInputElement>("weather-file");
  picked.addEventListener("change", () => {
    read([...picked.files ?? []]);
    picked.value = ""; // the same file, mended, may be picked again
  });
  const held = (is: boolean) => document.body.classList.toggle(HELD, is);
  addEventListener("dragover", (event) => {
    if (!holdsFiles(event)) return;
    event.preventDefault(); // else the browser opens the file in place of the page
    held(true);
  });
  addEventListener("dragleave", (event) => {
    if (event.relatedTarget === null) held(false);
  });
  addEventListener("drop", (event) => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    held(false);
    read([...event.dataTransfer!.files]);
  });
}
