/** Where the light inside ends, as a table. @module */
import type { GlazingLight, LightMonth } from "../../house/mod.ts";
import { MONTH_ABBREVIATIONS } from "../../basics/mod.ts";
import type { Column } from "../kit/data_table.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { table } from "../kit/table.ts";

const share = (head: string, part: (month: LightMonth) => number): Column<LightMonth> => ({
  head,
  value: (month) => month.letIn > 0 ? part(month) / month.letIn : null,
  kind: "share",
});

/** Light let in month by month, and the shares of it that each surface takes up or lets out. */
export function lightTable(light: Pick<GlazingLight, "inside">): DisplayItem {
  return table(light.inside, [
    { head: "month", value: ({ month }) => MONTH_ABBREVIATIONS[month]! },
    { head: "let in, curtain open", value: ({ letIn }) => letIn, kind: "energy" },
    share("crop", ({ crop }) => crop),
    share("floor", ({ floor }) => floor),
    share("barrels and masonry", ({ mass }) => mass),
    share("walls and roof, to the air", ({ air }) => air),
    share("out through the glazing", ({ out }) => out),
    share("out through walls and roof", ({ throughSolid }) => throughSolid),
  ]);
}
