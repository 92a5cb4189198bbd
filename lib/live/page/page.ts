/**
 * The script of a live page: sliders, units, weather files and the address on one side, the workers on
 * the other.
 *
 * @module
 */
import type { ClimateYear } from "../../climate/types.ts";
import type { UnitSystem } from "../../units/quantity.ts";
import type { Changes, LivePage, LivePart, LiveYear, Resolution } from "../types.ts";
import { type Calculator, calculator } from "./calculator.ts";
import { byId, control, slidersIn } from "./elements.ts";
import { linkOf, readLink } from "./link.ts";
import { caseText, finishedText, weatherText } from "./text.ts";
import { type View, viewParts } from "./view.ts";
import { pageWeather } from "./weather.ts";
import { listenForWeather } from "./weather_files.ts";

/** Sources of the workers, put in when the page is bundled. */
declare const WORKER_SCRIPT: string;
declare const READER_SCRIPT: string;

/** named once, so that it stands once in the page */
const YEAR_SCRIPT: string = WORKER_SCRIPT;

/** ms a slider must rest before its case is computed. */
const REST = 250;
/** px, widest picture. */
const WIDEST = 760;

/** The reader's own weather. */
interface OwnWeather {
  readonly climate: ClimateYear;
  /** names of its files */
  readonly names: string;
}

const page = JSON.parse(byId("live-data").textContent!) as LivePage;
const sliders = slidersIn(page);
let changes: Changes = {};
let units: UnitSystem = page.units;
/** weather of the study; null until it is unpacked */
let climate: ClimateYear | null = null;
/** weather that is reckoned with; null for the study's */
let weather: OwnWeather | null = null;
/** years of the study as it is on that weather, as far as they are known */
let base: Partial<Record<Resolution, LiveYear>> = page.published;
/** what is being computed */
let wanted: { readonly how: Resolution; readonly what: "base" | "case" } | null = null;
/** what stands on the page, until something newer is known */
let shown: Omit<View, "units"> & { readonly weather: OwnWeather | null } = {
  study: page.published.full,
  own: null,
  resolution: "full",
  weather: null,
};
let calculating: Calculator | null = null;
let timer: ReturnType<typeof setTimeout> | undefined;

function say(text: string): void {
  byId("status").textContent = text;
}

function moved(): boolean {
  return Object.keys(changes).length > 0;
}

function width(): number {
  return Math.max(260, Math.min(WIDEST, byId("days").clientWidth));
}

function draw(): void {
  const parts = viewParts({ ...shown, units }, [width()]);
  for (const [id, markup] of Object.entries(parts)) byId(id).innerHTML = markup;
  byId("weather").textContent = weatherText(shown.weather?.climate ?? page.weather, shown.weather);
  byId("case").textContent = moved()
    ? `Your case: ${caseText(changes, page.sliders, units)}.`
    : "The study as it is.";
  byId<HTMLButtonElement>("full").disabled = !moved() && weather === null;
  byId("study-weather").hidden = weather === null;
}

function working(share: number | null): void {
  const bar = byId<HTMLProgressElement>("progress");
  bar.hidden = share === null;
  bar.value = share ?? 0;
  byId("stop").hidden = share === null;
}

function showNotices(year: LiveYear | null): void {
  const all = [...weather?.climate.notices ?? [], ...year?.notices ?? []];
  byId("notices").replaceChildren(
    ...all.filter(({ level }) => level === "warning").map(({ text }) => {
      const item = document.createElement("li");
      item.textContent = text;
      return item;
    }),
  );
}

/** Ends what is being done; the study as it is stands on the page. */
function showStudy(study: LiveYear, resolution: Resolution, words: string): void {
  calculating?.stop();
  clearTimeout(timer);
  wanted = null;
  working(null);
  shown = { study, own: null, resolution, weather };
  showNotices(null);
  draw();
  say(words);
}

/** Shows the study as it is on the weather that holds, computed where it is not known. */
function backToStudy(words: string): void {
  changes = {};
  if (weather === null) showStudy(page.published.full, "full", words);
  else ask("screening");
}

function ask(how: Resolution): void {
  clearTimeout(timer);
  if (calculating === null) return;
  const known = base[how];
  if (!moved() && known !== undefined) {
    const whose = how === "full"
      ? "The study on your weather"
      : "A quick year of the study on your weather";
    return showStudy(known, how, finishedText(whose, known, units));
  }
  wanted = { how, what: known === undefined ? "base" : "case" };
  working(0);
  const whose = known === undefined ? "the study on your weather" : "your case";
  say(
    how === "full"
      ? `Computing ${whose} as finely as the study …`
      : `Computing a quick year of ${whose} …`,
  );
  calculating.run(known === undefined ? {} : changes, how);
}

function known(part: LivePart, share: number): void {
  working(share);
  if (wanted?.what !== "case" || part.days.store === undefined) return;
  const { how } = wanted;
  shown = { study: base[how]!, own: part, resolution: how, weather };
  draw();
}

function finished(year: LiveYear): void {
  const { how, what } = wanted!;
  if (what === "base") {
    base = { ...base, [how]: year };
    return ask(how);
  }
  wanted = null;
  working(null);
  shown = { study: base[how]!, own: year, resolution: how, weather };
  showNotices(year);
  draw();
  say(finishedText(how === "full" ? "Your case" : "A quick year of your case", year, units));
}

function reckonOn(own: OwnWeather | null): void {
  weather = own;
  base = own === null ? page.published : {};
  calculating?.onWeather(own?.climate ?? climate!);
  byId("weather-faults").textContent = "";
  setLink();
  if (moved() || own !== null) ask("screening");
  else backToStudy("Back on the weather of the study.");
}

function setLink(): void {
  const text = linkOf({ changes, units, ownWeather: weather !== null }, page);
  history.replaceState(null, "", text === "" ? location.pathname + location.search : `#${text}`);
}

function fromLink(): void {
  const read = readLink(location.hash.slice(1), page, weather !== null);
  ({ changes, units } = read);
  sliders.show(changes, units);
  control(`units-${units}`).checked = true;
  if (moved()) ask("screening");
  else backToStudy(read.faults.join(" "));
  draw();
  byId("link-faults").textContent = read.faults.join(" ");
}

function listen(): void {
  sliders.onMove((name, value) => {
    changes = { ...changes, [name]: value };
    sliders.show(changes, units);
    setLink();
    clearTimeout(timer);
    timer = setTimeout(() => ask("screening"), REST);
  });
  for (const system of ["SI", "US"] as const) {
    control(`units-${system}`).addEventListener("change", () => {
      units = system;
      sliders.show(changes, units);
      setLink();
      draw();
    });
  }
  byId("full").addEventListener("click", () => ask("full"));
  byId("back").addEventListener("click", () => {
    backToStudy("Back to the study as it is.");
    sliders.show(changes, units);
    setLink();
  });
  byId("study-weather").addEventListener("click", () => {
    reckonOn(null);
    control("weather-file").focus(); // the button is gone
  });
  byId("stop").addEventListener("click", () => {
    calculating?.stop();
    wanted = null;
    working(null);
    say("Stopped. What is shown may be unfinished; move a slider to compute again.");
  });
  listenForWeather([YEAR_SCRIPT, "\n", READER_SCRIPT], page.terms, {
    reading: (names) => say(`Reading ${names} …`),
    year: (year, names) => reckonOn({ climate: year, names }),
    fault(message) {
      say("The weather file cannot be used; nothing has changed.");
      byId("weather-faults").textContent = message;
    },
  });
  addEventListener("hashchange", fromLink);
  let drawnAt = width();
  addEventListener("resize", () => {
    if (width() === drawnAt) return;
    drawnAt = width();
    draw();
  });
}

function cannot(): void {
  calculating = null;
  byId("panel").hidden = true;
  working(null);
  say("This browser cannot compute here: the figures below are those of the study as it is.");
}

async function start(): Promise<void> {
  listen();
  draw();
  climate = await pageWeather(page, byId("live-weather").textContent!.trim());
  calculating = calculator(YEAR_SCRIPT, page.study, {
    part: known,
    result: finished,
    fault(message) {
      wanted = null;
      working(null);
      say(`This case cannot be computed: ${message}`);
    },
    broken: cannot,
  });
  calculating.onWeather(climate);
  byId("panel").hidden = false;
  fromLink();
}

start().catch(cannot);
