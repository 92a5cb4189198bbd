/** A sweep of other tube fields, for the settled year to judge. @module */
import { formatQuantity, type Kind } from "../../units/mod.ts";
import type { FieldCandidate } from "../../tubes/mod.ts";
import type { Study } from "../types.ts";

/** A field to be tried. */
export type FieldToTry =
  & Pick<FieldCandidate, "tube" | "count" | "length" | "spacing" | "layers" | "depth">
  & {
    /** headers, fans and flow that were chosen with it; those of the study unless given */
    readonly air?: FieldAirToTry;
  };

/** Headers, fans and flow of a field. */
export interface FieldAirToTry {
  /** design air flow, m³/s */
  readonly airFlow: number;
  /** inside diameter of the supply header, m */
  readonly diameter: number;
  /** inside diameter of the return header, m */
  readonly returnDiameter: number;
  /** number of pairs of headers */
  readonly groups: number;
  /** id of the fan */
  readonly fan: string;
  /** number of fans */
  readonly fans: number;
  /** speed over the rated speed, a ratio */
  readonly speed: number;
}

/**
 * Text of a sweep file whose first row is the study's own field and the others are fields to try, with
 * the headers, fans and flow chosen for them, or those of the study; each layer then has headers of
 * its own where the study's layers do. Control stays that of the study.
 *
 * @param study checked study
 * @param fields to be tried, besides its own
 */
export function fieldSweepText(study: Study, fields: readonly FieldToTry[]): string {
  const { tubes, headers, fan } = study;
  const each = headers.groups === tubes.layers;
  const own: FieldAirToTry = {
    airFlow: tubes.airFlow,
    diameter: headers.diameter,
    returnDiameter: headers.returnDiameter,
    groups: headers.groups,
    fan: fan.fan,
    fans: fan.count,
    speed: fan.speed,
  };
  const all: readonly FieldToTry[] = [{ ...tubes, air: own }, ...fields];
  const quantity = (value: number, kind: Kind) => formatQuantity(value, kind, "SI", 6);
  const length = (value: number) => quantity(value, "length");
  const row = (key: string, value: (field: FieldToTry) => string | number) =>
    `  ${key}: [${all.map(value).join(", ")}]`;
  const air = (key: string, value: (air: FieldAirToTry) => string | number) =>
    row(key, (field) => value(field.air ?? own));
  const groups = ({ air, layers, count }: FieldToTry) =>
    air?.groups ?? (each ? layers : Math.min(headers.groups, count));
  return `# Tube fields of ${study.heading.name}: its own first, then ${fields.length} that a quick estimate leaves, by
# rising cost. The settled year judges each. Change them, add to them, and run the sweep again into
# another folder.
form: zip
chapters: [tubes, headers, fan, store, worth]
keys:
${
    [
      row("tubes.tube", ({ tube }) => tube),
      row("tubes.count", ({ count }) => count),
      row("tubes.length", (field) => length(field.length)),
      row("tubes.spacing", (field) => length(field.spacing)),
      row("tubes.layers", ({ layers }) => layers),
      row("tubes.depth", (field) => length(field.depth)),
      row("headers.groups", groups),
      ...fields.every(({ air }) => air === undefined) ? [] : [
        air("tubes.airFlow", ({ airFlow }) => quantity(airFlow, "airFlow")),
        air("headers.diameter", ({ diameter }) => length(diameter)),
        air("headers.returnDiameter", ({ returnDiameter }) => length(returnDiameter)),
        air("fan.fan", ({ fan }) => fan),
        air("fan.count", ({ fans }) => fans),
        air("fan.speed", ({ speed }) => quantity(speed, "number")),
      ],
    ].join("\n")
  }
`;
}
