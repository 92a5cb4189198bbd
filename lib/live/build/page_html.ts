/** A live page as one file: words, static figures, data and script. @module */
import { createHash } from "node:crypto";
import { inert } from "../../basics/mod.ts";
import { escaped, shown, weatherText } from "../page/text.ts";
import { viewParts } from "../page/view.ts";
import type { LivePage, Slider } from "../types.ts";
import style from "../page/page.css" with { type: "text" };

/** px of the pictures in the file: for a wide page and for a phone. */
const WIDTHS = [760, 340];

/** What goes into the file. */
export interface PageContent {
  readonly page: LivePage;
  /** packed series of weather */
  readonly weather: string;
  /** bundled script */
  readonly script: string;
}

function hashSource(text: string): string {
  return `'sha256-${createHash("sha256").update(text).digest("base64")}'`;
}

/**
 * What the page may do: its own style and script, with the WebAssembly that is in it, a worker from its
 * own text, nothing from elsewhere. No text may be evaluated.
 */
function policy(sheet: string, script: string): string {
  return [
    "default-src 'none'",
    `script-src ${hashSource(script)} 'wasm-unsafe-eval'`,
    "worker-src blob:",
    `style-src ${hashSource(sheet)}`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
}

/** Data in a script element: nothing in it may end the element. */
function dataText(data: unknown): string {
  return JSON.stringify(data).replaceAll("<", "\\u003c");
}

/** A script that the page's text can hold as it is. */
function inlineScript(script: string): string {
  if (/<\/script|<!--|\r|\0/i.test(script)) {
    throw new Error("Cannot put the live script into a page: it holds what would end its element");
  }
  return script;
}

function sliderMarkup({ name, label, least, most, step, value, kind }: Slider, page: LivePage) {
  const words = escaped(shown(value, kind, page.units));
  return `<div class="slider"><label for="slider-${name}">${escaped(label)}</label>` +
    `<output id="slider-${name}-value" for="slider-${name}">${words}</output>` +
    `<input type="range" id="slider-${name}" min="${least}" max="${most}" step="${step}" ` +
    `value="${value}" aria-valuetext="${words}" autocomplete="off"></div>`;
}

function unitsMarkup(page: LivePage): string {
  const radio = (system: "SI" | "US", words: string) =>
    `<label><input type="radio" name="units" id="units-${system}" value="${system}"` +
    `${page.units === system ? " checked" : ""} autocomplete="off"> ${words}</label>`;
  return `<fieldset><legend>Units</legend>${radio("SI", "SI")} ${radio("US", "US")}</fieldset>`;
}

/** Where a reader gives weather. */
const WEATHER = `<fieldset><legend>Your own weather</legend>
<p id="weather-help">A year of hourly weather (TMY3, NSRDB, PVGIS), a table together with its columns
file, or twelve monthly normals. Pick it, or drop it anywhere on this page. It is read here and goes
nowhere; a link to this page cannot hold it.</p>
<p><label for="weather-file">Weather file</label>
<input type="file" id="weather-file" multiple accept=".csv,.txt,.tsv,.dat,.yaml,.yml"
aria-describedby="weather-help"></p>
<p id="weather-faults" role="alert"></p>
<p><button type="button" id="study-weather" hidden>Back to the weather of the study</button></p>
</fieldset>`;

function panelMarkup(page: LivePage): string {
  return `<div id="panel" hidden>
<fieldset><legend>Change the study</legend><div class="sliders">
${page.sliders.map((slider) => sliderMarkup(slider, page)).join("\n")}
</div></fieldset>
${WEATHER}
${unitsMarkup(page)}
<p><button type="button" id="full" disabled>Compute as finely as the study</button>
<button type="button" id="back">Back to the study</button>
<button type="button" id="stop" hidden>Stop</button></p>
<progress id="progress" max="1" value="0" aria-label="Progress of the calculation" hidden></progress>
</div>`;
}

/** Renders the page. */
export function pageHtml({ page, weather, script }: PageContent): string {
  const sheet = `\n${style}`;
  const code = inlineScript(script);
  const { published: { full }, units } = page;
  const parts = viewParts({ study: full, own: null, resolution: "full", units }, WIDTHS);
  const title = escaped(inert(page.title));
  const head = `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy(sheet, code)}">
<meta name="referrer" content="no-referrer">
<title>${title}: change it and see</title>
<style>${sheet}</style>
</head>
<body>
<main>
<h1>${title}: change it and see</h1>
<p>The year that repeats, with the store and with the fan always off. Move a slider, and your browser
computes the year again, freezing soil included, with the library that computed the study. Nothing is
sent anywhere.</p>
<noscript><p>Scripts are switched off here: below stand the figures of the study as it is.</p></noscript>
<p id="link-faults"></p>
${panelMarkup(page)}
<p id="status" role="status" aria-live="polite"></p>
<p id="case">The study as it is.</p>
<p id="weather">${escaped(inert(weatherText(page.weather, null)))}</p>
<ul id="notices" aria-label="Warnings about your case"></ul>
<figure><figcaption>Coldest air of each day, without a heater</figcaption>
<ul class="key" id="days-key">${parts["days-key"]}</ul>
<div class="picture" id="days">${parts.days}</div></figure>
<figure><figcaption>Heat to hold the set point, by month</figcaption>
<ul class="key" id="months-key">${parts["months-key"]}</ul>
<div class="picture" id="months">${parts.months}</div></figure>
<h2>Figures</h2>
<p>A quick year takes three slices of soil along the tubes and, where many tubes lie close,
neighbours together: it is compared with a quick year of the study, never with its full figures.</p>
<div id="figures">${parts.figures}</div>
<h2>The months behind the pictures</h2>
<div id="table" role="region" aria-label="Months" tabindex="0">${parts.table}</div>
<p>A screening figure decides nothing by itself: the report of the study says how far off its
figures may be, and which cautions go with the work.</p>
</main>
<script type="application/json" id="live-data">${dataText(page)}</script>
<script type="text/plain" id="live-weather">${weather}</script>
`;
  return `${head}<script>${code}</script>\n</body>\n</html>\n`;
}
