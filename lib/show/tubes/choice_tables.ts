/** Tables that help to choose a tube field. @module */
import { airProperties } from "../../air/mod.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { showSi } from "../../units/mod.ts";
import { DESIGN_AIR_TEMPERATURE, meanPressure, type Study } from "../../study/mod.ts";
import {
  crossSection,
  effectiveness,
  type FieldCandidate,
  filmCoefficient,
  frictionColebrook,
  nusseltGnielinski,
  reynoldsNumber,
  type SearchAround,
  transferUnits,
  tubeLoss,
  type TubeProduct,
  TUBES,
  type TubesResult,
} from "../../tubes/mod.ts";
import type { FouledRow } from "./tube_water.ts";
import { table } from "../kit/table.ts";

/** What one product does at the study's flow and length of one tube. */
export interface MaterialRow {
  /** row of data/tubes */
  readonly product: TubeProduct;
  /** m/s */
  readonly airSpeed: number;
  /** Darcy factor of this wall */
  readonly friction: number;
  /** Darcy factor of a smooth wall of this size */
  readonly smoothFriction: number;
  /** Pa of one tube */
  readonly pressureDrop: number;
  /** W/(m² K), smooth-tube film */
  readonly film: number;
  /** W/(m² K) that the rough friction factor would wrongly give; null where the flow is not turbulent */
  readonly wrongFilm: number | null;
  /** 0 to 1 */
  readonly effectiveness: number;
}

/** Every product of data/tubes at the study's flow and length of one tube. */
export function materialRows(study: Study, tubes: TubesResult): MaterialRow[] {
  const air = airProperties(DESIGN_AIR_TEMPERATURE, meanPressure(study));
  const { length, flowPerTube: airFlow } = tubes;
  const { extraLosses } = study.tubes;
  return TUBES.map((product) => {
    const diameter = product.insideDiameter;
    const airSpeed = airFlow / crossSection(diameter);
    const reynolds = reynoldsNumber(airSpeed, diameter, air);
    const loss = tubeLoss({ product, length, airFlow, extraLosses, air });
    const film = filmCoefficient(airSpeed, diameter, air);
    const turbulent = reynolds >= 4000;
    return {
      product,
      airSpeed,
      friction: loss.frictionFactor,
      smoothFriction: turbulent ? frictionColebrook(reynolds, 0) : loss.frictionFactor,
      pressureDrop: loss.pressureDrop,
      film,
      wrongFilm: turbulent && product.wall === "corrugated"
        ? nusseltGnielinski(reynolds, air.prandtl, loss.frictionFactor) * air.conductivity /
          diameter
        : null,
      effectiveness: effectiveness(
        transferUnits({ filmCoefficient: film, diameter, length, airFlow, air }),
      ),
    };
  });
}

/** The table of tubes at the study's flow and length. */
export function materialTable(rows: readonly MaterialRow[]): DisplayItem {
  return table(rows, [
    { head: "tube", value: (row) => row.product.id.replaceAll("-", " "), right: false },
    {
      head: "inside",
      value: (row) => row.product.insideDiameter,
      kind: "smallLength",
      us: false,
    },
    {
      head: "wall",
      value: (row) =>
        row.product.manning === null
          ? `ε ${(1000 * row.product.roughness!).toPrecision(2)} mm`
          : `n ${row.product.manning}`,
      right: true,
    },
    { head: "friction", value: (row) => row.friction, digits: 4 },
    { head: "friction, smooth", value: (row) => row.smoothFriction, digits: 4 },
    { head: "pressure", value: (row) => row.pressureDrop, kind: "pressure", us: false },
    { head: "film", value: (row) => row.film, kind: "transmittance", us: false },
    { head: "film coefficient if ribs helped", value: (row) => row.wrongFilm, digits: 2 },
    { head: "effective", value: (row) => row.effectiveness, kind: "share" },
  ], "Every tube in the list at this study's flow and length per tube");
}

/** A few fields of the front: cheapest, most heat, least electricity, and most heat for the money. */
export function searchTable(search: SearchAround): DisplayItem {
  const { front, own } = search;
  const best = (value: (field: FieldCandidate) => number) =>
    front.reduce((most, field) => value(field) > value(most) ? field : most, front[0]!);
  const picks = front.length === 0 ? [] : [
    { why: "cheapest", field: best((field) => -field.cost) },
    { why: "most heat", field: best((field) => field.heat) },
    { why: "most heat for its cost", field: best((field) => field.heat / field.cost) },
    {
      why: "most heat for its electricity",
      field: best((field) => field.heat / Math.max(1e-9, field.fanEnergy)),
    },
  ];
  const rows = own === null ? picks : [...picks, { why: "this study", field: own }];
  return table(
    rows,
    [
      { head: "", value: (row) => row.why },
      { head: "tube", value: (row) => row.field.tube.replaceAll("-", " ") },
      { head: "number", value: (row) => row.field.count, kind: "count" },
      { head: "length", value: (row) => row.field.length, kind: "length", us: false },
      { head: "spacing", value: (row) => row.field.spacing, kind: "depth", us: false },
      { head: "layers", value: (row) => row.field.layers, kind: "count" },
      { head: "depth", value: (row) => row.field.depth, kind: "depth", us: false },
      { head: "heat, kWh a day", value: (row) => row.field.heat, digits: 1 },
      { head: "fan, kWh a day", value: (row) => row.field.fanEnergy, digits: 2 },
      { head: "cost", value: (row) => row.field.cost, digits: 0 },
    ],
    `${front.length} of ${search.allowed} allowed designs are unbeaten`,
  );
}

/** What silt or water in one tube does. */
export function fouledTable(rows: readonly FouledRow[], study: Study): DisplayItem {
  return table(
    rows,
    [
      { head: "in the tube", value: (row) => row.name },
      { head: "deepest", value: (row) => row.filling.depth, kind: "smallLength" },
      { head: "litres of water", value: (row) => row.litres, digits: 1 },
      { head: "air flow of this tube", value: (row) => row.flow, kind: "share" },
      { head: "heat of this tube", value: (row) => row.heat, kind: "share" },
    ],
    `One bad tube at a fall of ${showSi(study.tubes.slope, "sharePrecise")}, with the others clean`,
  );
}
