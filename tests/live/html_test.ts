import { assert, assertEquals, assertThrows } from "@std/assert";
import { createHash } from "node:crypto";
import { parseHTML } from "linkedom";
import { pageHtml } from "winterground/live/build/page_html.ts";
import { slidersOf } from "winterground/live/build/sliders.ts";
import { liveStudy, packedWeather, weatherTerms } from "winterground/live/build/study_data.ts";
import { pageWeather } from "winterground/live/page/weather.ts";
import type { LivePage, LiveYear } from "winterground/live/types.ts";
import { openSmallStudy } from "../harness/small_study.ts";

const study = await openSmallStudy();
const weather = await packedWeather(study.climate);
const days = (value: number) => Array.from({ length: 365 }, (_, day) => value + day % 7);
const year: LiveYear = {
  figures: {
    airFlow: 0.5,
    heatIn: 12345.6,
    heatOut: 8765.4,
    fanEnergy: 432.1,
    coldestHour: -7.25,
    coldestHourNoFan: -12.5,
    hoursBelowFreezing: 321,
    hoursBelowFreezingNoFan: 654,
    backupHeat: 7000,
    backupHeatNoFan: 9000,
    savedHeat: 2000,
  },
  days: { outdoors: days(-30), store: days(-7.25), noFan: days(-12.5) },
  months: { store: Array(12).fill(700), noFan: Array(12).fill(900) },
  slices: 8,
  notices: [],
};
const page: LivePage = {
  title: 'A "house" </script><b>&',
  mark: "ab-cd",
  units: "SI",
  study: liveStudy(study),
  weather: weather.head,
  series: weather.series,
  terms: weatherTerms(study),
  sliders: slidersOf(study, 0.45),
  published: { full: year, screening: year },
};
const SCRIPT = "document.title;";
const html = pageHtml({ page, weather: weather.text, script: SCRIPT });
const { document } = parseHTML(html);

Deno.test("a page names the weather's file, not the folders it lay in", async () => {
  // Property: nothing of the publisher's machine goes out
  for (const source of ["/home/me/climate/year.csv", "C:\\me\\year.csv", "year.csv"]) {
    const { head } = await packedWeather({ ...study.climate, source });
    assertEquals(head.source, "year.csv");
  }
});

Deno.test("without a script the page shows the study's own figures and pictures", () => {
  // Property: figures with their units, each picture for a wide page and for a phone, with words
  const text = document.querySelector("#figures")!.textContent!;
  for (
    const figure of ["2000\u00a0kWh", "12\u202f346\u00a0kWh", "−7.3\u00a0degC", "0.500\u00a0m³/s"]
  ) {
    assert(text.includes(figure), `${figure} in ${text}`);
  }
  for (const id of ["days", "months"]) {
    const pictures = [...document.querySelectorAll(`#${id} > svg`)];
    assertEquals(pictures.map((one) => one.getAttribute("width")), ["760", "340"]);
    for (const one of pictures) {
      assertEquals(one.getAttribute("role"), "img");
      assert(/-?\d/.test(one.getAttribute("aria-label")!), id);
    }
  }
  assert(document.querySelector("#panel")!.hasAttribute("hidden"), "sliders wait for the script");
});

Deno.test("a page may run its own script and style, and load nothing", () => {
  // Property: hashes of the policy are those of the page's texts; no style or handler elsewhere
  const policy = document.querySelector("meta[http-equiv]")!.getAttribute("content")!;
  const hash = (text: string) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;
  assert(policy.startsWith("default-src 'none'"));
  assert(policy.includes(`script-src ${hash(SCRIPT)} 'wasm-unsafe-eval';`));
  assert(policy.includes(`style-src ${hash(document.querySelector("style")!.textContent!)};`));
  const rest = policy.replace("'wasm-unsafe-eval'", "");
  assert(!/unsafe|https?:|\*/.test(rest), policy);
  for (const one of document.querySelectorAll("*")) {
    for (const { name } of one.attributes) assert(!/^(?:style|src|href|on)/.test(name), name);
  }
});

Deno.test("what the page carries comes out as it went in, whatever its title holds", async () => {
  // Property: data blocks; nothing of a study ends an element
  assertEquals(document.querySelector("h1 b"), null);
  assertEquals(document.querySelectorAll("script").length, 3);
  const carried = JSON.parse(document.querySelector("#live-data")!.textContent!) as LivePage;
  assertEquals(carried, JSON.parse(JSON.stringify(page)));
  const unpacked = await pageWeather(
    carried,
    document.querySelector("#live-weather")!.textContent!,
  );
  assertEquals(unpacked.dryBulb, study.climate.dryBulb);
  assertEquals(unpacked.pressure, study.climate.pressure);
  assertEquals(unpacked.place, study.climate.place);
});

Deno.test("a script that would end its element is refused", () => {
  // Property: the four texts that an element of a page does not survive
  for (const script of ['"</script>"', '"<!--"', "a\rb", "a\0b"]) {
    assertThrows(() => pageHtml({ page, weather: "", script }));
  }
});

Deno.test("sliders hold the study's value and stay where a study may go", () => {
  // Property: ends around the value, on steps; a study without a curtain has no slider for it
  assertEquals(
    page.sliders.map(({ name }) => name),
    ["length", "count", "speed", "moisture", "leakage", "curtain", "setPoint"],
  );
  for (const { name, least, most, value, step } of page.sliders) {
    assert(least <= value && value <= most && least < most, name);
    assert(Math.abs(least / step - Math.round(least / step)) < 1e-9, name);
  }
  const bare = { ...study, house: { ...study.house, curtain: null } };
  const measured = { ...bare, soil: { ...study.soil, measuredConductivity: 1.4 } };
  assertEquals(
    slidersOf(measured, 0.45).map(({ name }) => name),
    ["length", "count", "speed", "conductivity", "leakage", "setPoint"],
  );
});
