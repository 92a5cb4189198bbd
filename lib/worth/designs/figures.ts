/** Figures of the search for other designs. @module */
import { type FigureRow, numberFigure } from "../../basics/figures.ts";
import { showSi } from "../../units/mod.ts";
import type { DesignChoice, DesignRow, DesignSearch } from "./types.ts";

/** The designs to look at first; null with the reason where none was searched. */
export function designFigures(search: DesignSearch | null | undefined): readonly FigureRow[] {
  const money = search?.currency ?? "money";
  const open = search === undefined
    ? "searched when asked for, and by the whole study where worth.search is yes"
    : search === null
    ? "worth.search is no, or a price is missing"
    : null;
  const best = search?.best ?? null;
  const cheapest = search?.cheapest ?? null;
  const noBest = open ?? "no design keeps all limits";
  const noCheapest = open ?? "no design within the limits saves heat that the mesh resolves";
  return [
    words(
      "worth.bestField",
      "design of the store with the greatest net savings of those searched",
      {
        row: best,
        why: noBest,
      },
    ),
    numberFigure(
      "worth.bestFieldCapital",
      best?.capital ?? null,
      money,
      "first cost less grants of the design with the greatest net savings",
      noBest,
    ),
    numberFigure(
      "worth.bestFieldSavedHeat",
      best?.saved ?? null,
      "kWh",
      "heat saved a year by the design with the greatest net savings",
      noBest,
    ),
    numberFigure(
      "worth.bestFieldNetSavings",
      best?.netSavings ?? null,
      money,
      "greatest net savings of the designs searched; below nought where none pays",
      noBest,
    ),
    words("worth.cheapestField", "design of those searched whose kilowatt-hour saved costs least", {
      row: cheapest,
      why: noCheapest,
    }),
    numberFigure(
      "worth.cheapestFieldCapital",
      cheapest?.capital ?? null,
      money,
      "first cost less grants of the design with the cheapest heat",
      noCheapest,
    ),
    numberFigure(
      "worth.cheapestFieldSavedHeat",
      cheapest?.saved ?? null,
      "kWh",
      "heat saved a year by the design with the cheapest heat",
      noCheapest,
    ),
    numberFigure(
      "worth.cheapestFieldCostOfHeat",
      cheapest?.costOfHeat ?? null,
      `${money}/kWh`,
      "least levelised cost of heat saved among the designs searched",
      noCheapest,
    ),
  ];
}

function words(
  key: string,
  label: string,
  { row, why }: { readonly row: DesignRow | null; readonly why: string },
): FigureRow {
  return row === null
    ? [key, { value: null, unit: "text", label: `${label}: ${why}` }]
    : [key, { value: fieldWords(row.choice), unit: "text", label }];
}

/** A design in a few words. */
function fieldWords(choice: DesignChoice): string {
  const { count, tube, length, layers, depth, fans, fan, edgeBoard } = choice;
  return `${count} × ${showSi(length, "length")} of ${tube} in ${layers} ` +
    `${layers === 1 ? "layer" : "layers"} from ${showSi(depth, "depth")} down, ` +
    `${showSi(choice.airFlow, "airFlow")} by ${fans} × ${fan}` +
    (edgeBoard ? ", board at the edge to below the tubes" : "");
}
