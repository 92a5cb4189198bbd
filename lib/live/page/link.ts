/** The state of a live page in its address: values moved, units, and of which study they are. @module */
import type { UnitSystem } from "../../units/quantity.ts";
import type { ChangeName, Changes, Slider } from "../types.ts";

/** What a reader has set. */
export interface PageState {
  readonly changes: Changes;
  readonly units: UnitSystem;
  /** true on the reader's own weather, which an address cannot hold */
  readonly ownWeather?: boolean;
}

/** What an address says, and what of it cannot be used. */
export interface LinkRead extends Omit<PageState, "ownWeather"> {
  /** sentences for the reader; none where all of it was used */
  readonly faults: readonly string[];
}

/** What an address is read against. */
export interface LinkFrame {
  readonly sliders: readonly Slider[];
  readonly units: UnitSystem;
  /** of the page's study, weather and library */
  readonly mark: string;
}

const NUMBER = /^-?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

/** The part of an address behind its `#`; empty where nothing was set. */
export function linkOf({ changes, units, ownWeather }: PageState, frame: LinkFrame): string {
  const parts = new URLSearchParams();
  for (const { name } of frame.sliders) {
    if (changes[name] !== undefined) parts.set(name, String(changes[name]));
  }
  if (units !== frame.units) parts.set("units", units);
  if (ownWeather === true) parts.set("weather", "own");
  if (parts.size > 0) parts.set("study", frame.mark);
  return parts.toString();
}

/**
 * Reads the part of an address behind its `#`. What makes no sense is left out and said: a browser's
 * own slider would put itself in the middle.
 *
 * @param text behind the `#`
 * @param frame what it is read against
 * @param ownWeather true where the page reckons with a file of the reader's
 */
export function readLink(text: string, frame: LinkFrame, ownWeather = false): LinkRead {
  const parts = new URLSearchParams(text);
  const faults: string[] = [];
  const changes: { [Name in ChangeName]?: number } = {};
  let units = frame.units;
  for (const [name, found] of parts) {
    const slider = frame.sliders.find((one) => one.name === name);
    if (slider !== undefined) {
      const value = valueOf(found, slider);
      if (value !== undefined) changes[slider.name] = value;
      else faults.push(`The link's ${name} is not a value this page can show: left out.`);
    } else if (name === "units" && (found === "SI" || found === "US")) {
      units = found;
    } else if (name === "study" && found !== frame.mark) {
      faults.push("The link was made with another study or another state of the library.");
    } else if (name === "weather" && found === "own") {
      if (!ownWeather) {
        faults.push(
          "The link was made on a weather file, which a link cannot hold: these figures are on the " +
            "weather of the study until you give the file here.",
        );
      }
    } else if (name !== "study") {
      faults.push(`The link's "${name.slice(0, 20)}" means nothing to this page: left out.`);
    }
  }
  return { changes, units, faults };
}

function valueOf(text: string, { least, most, step }: Slider): number | undefined {
  const value = NUMBER.test(text) ? Number(text) : NaN;
  const whole = Number.isInteger(step) && Number.isInteger(least);
  return value >= least && value <= most && (!whole || Number.isInteger(value)) ? value : undefined;
}
