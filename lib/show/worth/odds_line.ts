/** The odds in one line, for the verdict card, the report and the console. @module */
import type { Figure, Figures } from "../../basics/mod.ts";
import type { Kind } from "../../units/mod.ts";
import { shown, shownBoth } from "../kit/reader.ts";

/** How to get the odds where nobody has asked for them yet. */
const HOW =
  'not counted here: they are under "Odds instead of one year" in notebook 08, and come ' +
  "with a whole study";

/**
 * Chance of an hour in which plants die and the coldest hour in ten years, with the store and
 * without, as far as the figures hold them; until then, how to get them.
 *
 * @param figures those of the worth chapter
 */
export function oddsLine(figures: Figures): string {
  const of = (key: string) => figures[`worth.${key}`];
  const [killing, killingNoStore] = [of("chanceOfKilling"), of("chanceOfKillingNoStore")];
  const [coldest, coldestNoStore] = [of("coldestHour10Years"), of("coldestHour10YearsNoStore")];
  if (killing === undefined || killing.provisional === true) return `${HOW}.`;
  const parts = [
    pair("an hour in which plants die comes in", "of winters", "share", killing, killingNoStore),
    pair("the coldest hour in ten years is", "", "temperature", coldest, coldestNoStore),
  ];
  return `${parts.join("; ")}. In brackets: 95 %, sampling only.`;
}

/** One figure with the store and without; the reason of its label where it has no value. */
function pair(
  opening: string,
  ending: string,
  kind: Kind,
  withStore: Figure | undefined,
  without: Figure | undefined,
): string {
  if (typeof withStore?.value !== "number" || typeof without?.value !== "number") {
    return withStore?.label ?? `${opening} –`;
  }
  const text = ({ value, low, high }: Figure) =>
    `${kind === "share" ? shown(value as number, kind) : shownBoth(value as number, kind)} (${
      shown(low!, kind)
    } to ${shown(high!, kind)})`;
  return `${opening} ${text(withStore)} ${ending} with the store, ${text(without)} without`
    .replaceAll("  ", " ");
}
