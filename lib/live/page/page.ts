/**
 * The script of a live page: sliders, units and the address on one side, the worker on the other.
 *
 * @module
 */
import type { UnitSystem } from "../../units/quantity.ts";
import type { Changes, LivePage, LivePart, LiveYear, Resolution } from "../types.ts";
import { type Calculator, calculator } from "./calculator.ts";
import { byId, control, slidersIn } from "./elements.ts";
import { linkOf, readLink } from "./link.ts";
import { caseText, shown } from "./text.ts";
import { viewParts } from "./view.ts";
import { pageWeather } from "./weather.ts";

/** Source of the worker, put in when the page is bundled. */
declare const WORKER_SCRIPT: string;

/** ms a slider must rest before its case is computed. */
const REST = 250;
/** px, widest picture. */
const WIDEST = 760;

const page = JSON.parse(byId("live-data").textContent!) as LivePage;
const sliders = slidersIn(page);
let changes: Changes = {};
let units: UnitSystem = page.units;
let resolution: Resolution = "full";
/** the reader's case as far as it is known; null before the first */
let own: LivePart | null = null;
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
  const parts = viewParts({
    study: page.published[resolution],
    own,
    resolution,
    units,
  }, [width()]);
  for (const [id, markup] of Object.entries(parts)) byId(id).innerHTML = markup;
  byId("case").textContent = moved()
    ? `Your case: ${caseText(changes, page.sliders, units)}.`
    : "The study as it is.";
  byId<HTMLButtonElement>("full").disabled = !moved();
}

function working(share: number | null): void {
  const bar = byId<HTMLProgressElement>("progress");
  bar.hidden = share === null;
  bar.value = share ?? 0;
  byId("stop").hidden = share === null;
}

function showNotices(year: LiveYear | null): void {
  const warnings = (year?.notices ?? []).filter(({ level }) => level === "warning");
  byId("notices").replaceChildren(...warnings.map(({ text }) => {
    const item = document.createElement("li");
    item.textContent = text;
    return item;
  }));
}

function ask(how: Resolution): void {
  clearTimeout(timer);
  if (calculating === null) return;
  if (!moved()) return backToStudy("The study as it is.");
  resolution = how;
  working(0);
  say(
    how === "full"
      ? "Computing your case as finely as the study …"
      : "Computing a quick year of your case …",
  );
  calculating.run(changes, how);
}

function backToStudy(words: string): void {
  calculating?.stop();
  working(null);
  changes = {};
  own = null;
  resolution = "full";
  showNotices(null);
  draw();
  say(words);
}

function finished(year: LiveYear): void {
  own = year;
  working(null);
  showNotices(year);
  draw();
  const { savedHeat, backupHeat, coldestHour } = year.figures;
  say(
    `${resolution === "full" ? "Your case" : "A quick year of your case"}: the store saves ` +
      `${shown(savedHeat, "energy", units)} of heat a year, back-up heat with it is ` +
      `${shown(backupHeat, "energy", units)}, and without a heater the coldest hour is ` +
      `${shown(coldestHour, "temperature", units)}.`,
  );
}

function setLink(): void {
  const text = linkOf({ changes, units }, page);
  history.replaceState(null, "", text === "" ? location.pathname + location.search : `#${text}`);
}

function fromLink(): void {
  const read = readLink(location.hash.slice(1), page);
  ({ changes, units } = read);
  sliders.show(changes, units);
  control(`units-${units}`).checked = true;
  own = null;
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
    clearTimeout(timer);
    backToStudy("Back to the study as it is.");
    sliders.show(changes, units);
    setLink();
  });
  byId("stop").addEventListener("click", () => {
    calculating?.stop();
    working(null);
    say("Stopped. What is shown may be unfinished; move a slider to compute again.");
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
  const climate = await pageWeather(page, byId("live-weather").textContent!.trim());
  calculating = calculator(WORKER_SCRIPT, { study: page.study, climate }, {
    part(part, share) {
      if (part.days.store !== undefined) {
        own = part;
        draw();
      }
      working(share);
    },
    result: finished,
    fault(message) {
      working(null);
      say(`This case cannot be computed: ${message}`);
    },
    broken: cannot,
  });
  byId("panel").hidden = false;
  fromLink();
}

start().catch(cannot);
