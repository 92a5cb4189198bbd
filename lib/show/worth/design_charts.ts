/** Other designs of the store, against what they cost. @module */
import * as Plot from "@observablehq/plot";
import { showNumber } from "../../units/mod.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import type { DesignChoice, DesignRow, DesignSearch } from "../../worth/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { ownMarks } from "../kit/own_marks.ts";
import { PALETTE } from "../kit/palette.ts";
import { paragraph } from "../kit/table.ts";
import { moneyText, priceText } from "./money_words.ts";

const NO_SEARCH =
  "No other designs were searched: write search: yes in the worth section of the study, which takes " +
  "minutes, and see that everything has a price.";

/** What is had for the money: the axis, and who is unbeaten in it. */
interface Gain {
  readonly key: "saved" | "cropHoursAvoided";
  readonly best: "bestForHeat" | "bestForHours";
  readonly label: string;
  readonly colour: string;
}

const GAINS: readonly Gain[] = [
  { key: "saved", best: "bestForHeat", label: "heat saved, kWh a year", colour: PALETTE.warm },
  {
    key: "cropHoursAvoided",
    best: "bestForHours",
    label: "hours below the crop's limit avoided, h a year",
    colour: PALETTE.air,
  },
];

/** Heat saved and hours avoided against the first cost; the study's own design beside the others. */
export function designChart(search: DesignSearch | null): DisplayItem {
  if (search === null) return paragraph(NO_SEARCH);
  const { rows, currency } = search;
  const own = rows.filter((row) => row.own);
  return figure(GAINS.map((gain) => gainPlot(gain, search)), {
    title: "Other designs of the store on the settled year, by first cost",
    alt:
      `${rows.length} designs from ${moneyText(rows[0]!.capital, currency)} to ${
        moneyText(rows.at(-1)!.capital, currency)
      }. ` + GAINS.map(({ best, label }) => {
        const kept = rows.filter((row) => row[best]).length;
        return `${kept} ${kept === 1 ? "is" : "are"} unbeaten in first cost and ${label}`;
      }).join("; ") +
      `. This study: ${moneyText(own[0]!.capital, currency)}, ${
        shown(own[0]!.saved, "energy")
      } saved, ${shown(own[0]!.cropHoursAvoided, "hours")} avoided.`,
    note:
      `Differences below ${shownBoth(search.savedResolution, "energy")} and ${
        shown(search.hoursResolution, "hours")
      } are not resolved: that much the coarse mesh moves the study's own design. Refused before ` +
      `any year was run: ${refusedWords(search)}.`,
    legend: [
      ...GAINS.map(({ label, colour }) => ({
        label: `unbeaten: ${label.split(",")[0]}`,
        colour,
        sign: "line" as const,
      })),
      { label: "hollow: beaten", colour: PALETTE.soil },
      { label: "star: this study", colour: PALETTE.ink },
    ],
    table: dataTable(rows, [
      { head: "", value: (row) => row.own ? "this study" : "" },
      { head: "tubes", value: (row) => row.choice.count, digits: 0 },
      { head: "tube", value: (row) => row.choice.tube },
      { head: "long", value: (row) => row.choice.length, kind: "length" },
      { head: "spacing", value: (row) => row.choice.spacing, kind: "depth" },
      { head: "layers", value: (row) => row.choice.layers, digits: 0 },
      { head: "depth", value: (row) => row.choice.depth, kind: "depth" },
      { head: "air flow", value: (row) => row.choice.airFlow, kind: "airFlow" },
      { head: "header", value: (row) => row.choice.header, kind: "smallLength" },
      { head: "fans", value: ({ choice }) => `${choice.fans} × ${choice.fan}` },
      { head: "board at the edge", value: (row) => row.choice.edgeBoard ? "yes" : "" },
      {
        head: "charging starts",
        value: (row) => row.choice.chargeStart,
        kind: "temperatureDifference",
      },
      { head: "discharge below", value: (row) => row.choice.dischargeBelow, kind: "temperature" },
      { head: "first cost", value: (row) => moneyText(row.capital, currency), right: true },
      { head: "heat saved", value: (row) => row.saved, kind: "energy" },
      { head: "hours avoided", value: (row) => row.cropHoursAvoided, kind: "hours" },
      { head: "fan electricity", value: (row) => row.fanEnergy, kind: "electricity" },
      {
        head: "cost of a kilowatt-hour saved",
        value: (row) => priceText(row.costOfHeat, currency),
        right: true,
      },
      { head: "net savings", value: (row) => moneyText(row.netSavings, currency), right: true },
      { head: "unbeaten in", value: unbeatenWords },
      { head: "limit broken", value: (row) => row.breaks ?? "" },
    ]),
  });
}

function gainPlot({ key, best, label, colour }: Gain, { rows, currency }: DesignSearch) {
  const place = { x: "capital", y: key } as const;
  const kept = rows.filter((row) => row[best]);
  const own = rows.filter((row) => row.own);
  return {
    height: 260,
    marginLeft: 70,
    x: { label: `first cost less grants, ${currency}`, grid: true, inset: 10 },
    y: { label, grid: true, zero: true },
    marks: [
      Plot.dot(rows.filter((row) => !row.own && !row[best]), {
        ...place,
        stroke: PALETTE.soil,
        r: 3,
      }),
      Plot.line(kept, { ...place, stroke: colour, strokeWidth: 2, curve: "step-after" }),
      Plot.dot(kept, { ...place, fill: colour, r: 4 }),
      ...ownMarks(own, place),
    ],
  };
}

function refusedWords({ refused }: DesignSearch): string {
  return Object.entries(refused).sort((a, b) => b[1] - a[1])
    .map(([reason, count]) => `${reason} (${showNumber(count, 0)})`).join(", ") || "none";
}

function unbeatenWords({ bestForHeat, bestForHours }: DesignRow): string {
  return [bestForHeat ? "heat" : "", bestForHours ? "hours" : ""].filter(Boolean).join(", ");
}

/** What the study's own design gives up, and the designs to look at first. */
export function designWords(search: DesignSearch | null): DisplayItem {
  if (search === null) return paragraph(NO_SEARCH);
  const { best, cheapest, currency, judged, runs } = search;
  const own = search.rows.find((row) => row.own)!;
  const sentences = [
    `${showNumber(judged, 0)} designs were judged by their limits and a quick estimate, and ${
      showNumber(runs, 0)
    } taken through the settled year.`,
    own.breaks === null ? "" : `This study's own design breaks a limit: ${own.breaks}.`,
    givenUpWords(search),
    cheapest === null
      ? "No design within the limits saves heat that the mesh resolves."
      : `The ${cheapest.own ? "study's own design saves" : "cheapest kilowatt-hour is saved by"} ${
        cheapest.own ? "the cheapest kilowatt-hour" : choiceWords(cheapest.choice)
      }: ${priceText(cheapest.costOfHeat, currency)}, ${
        shownBoth(cheapest.saved, "energy")
      } a year for ${moneyText(cheapest.capital, currency)}.`,
    bestWords(best, currency),
  ];
  return paragraph(sentences.filter((words) => words !== "").join(" "));
}

function bestWords(best: DesignRow | null, currency: string): string {
  if (best === null) return "No design keeps all limits.";
  const which = best.own ? "this study's own" : choiceWords(best.choice);
  return best.netSavings > 0
    ? `The greatest net savings against a heater alone, ${
      moneyText(best.netSavings, currency)
    }, come from ${which}.`
    : `None of them pays for itself at these prices; ${which} loses least, ${
      moneyText(-best.netSavings, currency)
    }.`;
}

function givenUpWords({ givesUp, currency, rows }: DesignSearch): string {
  const { moreHeat, sameHeat, fewerHours, sameHours } = givesUp;
  const own = rows.find((row) => row.own)!;
  const offers = [
    moreHeat && `${shownBoth(moreHeat.saved - own.saved, "energy")} more heat a year for no more ` +
      `money (${choiceWords(moreHeat.choice)})`,
    sameHeat && `${moneyText(own.capital - sameHeat.capital, currency)} for as much heat ` +
      `(${choiceWords(sameHeat.choice)})`,
    fewerHours &&
    `${
      shown(fewerHours.cropHoursAvoided - own.cropHoursAvoided, "hours")
    } more below the crop's limit avoided for no more money (${choiceWords(fewerHours.choice)})`,
    sameHours && `${moneyText(own.capital - sameHours.capital, currency)} for as many hours ` +
      `avoided (${choiceWords(sameHours.choice)})`,
  ].filter((words) => words !== null);
  return offers.length === 0
    ? "No design of the search betters this study's own."
    : `This study's own design gives up ${offers.join("; ")}.`;
}

/** A design in a few words, for readers of either units. */
function choiceWords(choice: DesignChoice): string {
  const { count, tube, length, layers, depth, fans, fan, edgeBoard } = choice;
  return `${count} × ${shownBoth(length, "length")} of ${tube} in ${layers} ${
    layers === 1 ? "layer" : "layers"
  } from ${shownBoth(depth, "depth")} down, ${shownBoth(choice.airFlow, "airFlow")} by ` +
    `${fans} × ${fan}${edgeBoard ? ", board at the edge to below the tubes" : ""}`;
}
