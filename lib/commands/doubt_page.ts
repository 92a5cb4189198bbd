/** The page for whoever checks a study: doubt.html. @module */
import { renderSinglePage, type SinglePage } from "../press/site/mod.ts";
import * as climate from "../show/climate/mod.ts";
import type { DisplayItem } from "../show/kit/figure.ts";
import * as soil from "../show/soil/mod.ts";
import * as store from "../show/store/mod.ts";
import { defaultsTable } from "../show/study/answer.ts";
import { inputs, siteInputs } from "../show/study/inputs.ts";
import { figuresTable } from "../show/study/figures_table.ts";
import { reviewTable, savedDoubtTable } from "../show/study/review.ts";
import * as worth from "../show/worth/mod.ts";
import { reviewStudy, type StudyRun } from "../study/mod.ts";

/** Renders the page from a run; what it needs and has not yet is computed. */
export async function doubtPage(run: StudyRun): Promise<string> {
  const { study: own } = run;
  const [weather, quality, ground, built, money, finer] = await Promise.all([
    run.climate(),
    run.climateQuality(),
    run.soil(),
    run.store(),
    run.worth(),
    run.resolution(),
  ]);
  const figures = await run.figures();
  const notices = await run.notices();
  const review = reviewStudy(own, {
    climate: weather,
    store: built,
    resolution: finer,
    worth: money,
    notices,
  });
  const banded = Object.fromEntries(
    Object.entries(figures).filter(([, { low }]) => low !== undefined),
  );
  const open = review.checks.filter(({ passes }) => passes !== true).length;
  return renderSinglePage({
    title: `Doubt it: ${own.heading.title}`,
    facts: [
      ["Question", own.heading.question],
      ["Checks", `${review.checks.length - open} as expected, ${open} to look at`],
      ["Weather", `${own.climate.source} (${own.climate.layout})`],
    ],
    sections: [
      section("What to ask of this study", reviewTable(review)),
      section(
        "Cells, steps, slices and soil made finer",
        store.refinementTable(finer),
        store.resolutionChart(finer),
        store.resolutionTable(finer),
      ),
      section("The control: the same house, the fan always off", store.withWithoutTable(built)),
      section("Where the heat goes", store.heatFlowChart(built), store.summaryTable(built)),
      section(
        "Heat put in by quarter, and when it comes back",
        store.quartersChart(built),
        store.quartersTable(built),
      ),
      section("Where the weather is from", siteInputs(own), climate.qualityTable(quality)),
      section(
        "Where the soil's values are from",
        inputs(own, "soil"),
        soil.propertyTable(ground),
        soil.estimatesTable(ground),
      ),
      section(
        "All doubt together",
        savedDoubtTable(review.saved),
        worth.doubtWords(money),
        figuresTable(banded),
      ),
      section("Values left to their defaults", defaultsTable(own)),
    ],
    foot: `Study ${own.studyHash.slice(0, 12)}; all hashes stand in results.json.`,
  });
}

function section(
  heading: string,
  ...items: readonly DisplayItem[]
): SinglePage["sections"][number] {
  return { heading, html: items.map((item) => item["text/html"] ?? "").join("\n") };
}
