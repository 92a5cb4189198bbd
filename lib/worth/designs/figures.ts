/** Figures of the search for other designs. @module */
import { type FigureRow, numberFigure } from "../../basics/figures.ts";
import { showSi } from "../../units/mod.ts";
import type { DesignChoice, DesignSearch } from "./types.ts";

/** The design with the greatest net savings; null with the reason where none was searched. */
export function designFigures(search: DesignSearch | null | undefined): readonly FigureRow[] {
  const money = search?.currency ?? "money";
  const why = search === undefined
    ? "searched when asked for, and by the whole study where worth.search is yes"
    : search === null
    ? "worth.search is no, or a price is missing"
    : "no design keeps all limits";
  const best = search?.best ?? null;
  const figure = (key: string, value: number, unit: string, label: string): FigureRow =>
    best === null
      ? [key, { value: null, unit, label: `${label}: ${why}` }]
      : numberFigure(key, value, unit, label);
  const label = "design of the store with the greatest net savings of those searched";
  return [
    ["worth.bestField", {
      value: best === null ? null : fieldWords(best.choice),
      unit: "text",
      label: best === null ? `${label}: ${why}` : label,
    }],
    figure("worth.bestFieldCapital", best?.capital ?? 0, money, "its first cost less grants"),
    figure("worth.bestFieldSavedHeat", best?.saved ?? 0, "kWh", "heat that it saves a year"),
    figure(
      "worth.bestFieldNetSavings",
      best?.netSavings ?? 0,
      money,
      "present value that it saves against a heater alone",
    ),
  ];
}

/** A design in a few words. */
export function fieldWords(choice: DesignChoice): string {
  const { count, tube, length, layers, depth, fans, fan, edgeBoard } = choice;
  return `${count} × ${showSi(length, "length")} of ${tube} in ${layers} ` +
    `${layers === 1 ? "layer" : "layers"} from ${showSi(depth, "depth")} down, ` +
    `${showSi(choice.airFlow, "airFlow")} by ${fans} × ${fan}` +
    (edgeBoard ? ", board at the edge to below the tubes" : "");
}
