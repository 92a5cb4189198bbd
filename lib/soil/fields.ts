/** The `soil` section of the study file. @module */
import {
  choice,
  type Field,
  type Fields,
  list,
  open,
  type Partly,
  quantity,
  quantityOr,
} from "../basics/fields.ts";

/** Texture class that picks the conductivity model's constants. */
export type SoilTexture =
  | "gravel"
  | "coarse sand"
  | "fine sand"
  | "silt"
  | "loam"
  | "clay"
  | "peat";

/** One layer of soil above the soil of the section. */
export interface SoilLayerInputs {
  /** m */
  readonly thickness: number;
  /** row of `data/soils/soils.csv` */
  readonly texture: SoilTexture;
  /** kg/m³ of dry soil in place */
  readonly dryDensity: number;
  /** water by volume, m³/m³ */
  readonly moisture: number;
  /** quartz share of the solids, 0 to 1 */
  readonly quartz: number;
  /** measured conductivity, W/(m K); null where not measured */
  readonly measuredConductivity: number | null;
}

/** `soil` section of the study file, in SI. */
export interface SoilInputs {
  /** row of `data/soils/soils.csv` */
  readonly texture: SoilTexture;
  /** kg/m³ of dry soil in place */
  readonly dryDensity: number;
  /** water by volume, m³/m³ */
  readonly moisture: number;
  /** quartz share of the solids, 0 to 1 */
  readonly quartz: number;
  /** measured conductivity that overrides the estimate, W/(m K); null where not measured */
  readonly measuredConductivity: number | null;
  /** what frozen soil conducts: more, as the models say, or as much as unfrozen; absent: modelled */
  readonly frozenConductivity?: "modelled" | "as unfrozen" | undefined;
  /** depth of the highest water table below the surface, m; null where unknown */
  readonly waterTableDepth: number | null;
  /** typical depth of the winter snow, m */
  readonly snowDepth: number;
  /** layers from the surface down; the soil of the section goes on below them */
  readonly layers?: readonly SoilLayerInputs[];
}

/** A layer as given: these keys may still wait for their default. */
export type SoilLayerGiven = Partly<SoilLayerInputs, "dryDensity" | "moisture" | "quartz">;
/** The section as given: these keys may still wait for their default. */
export type SoilGiven =
  & Omit<Partly<SoilInputs, "dryDensity" | "moisture" | "quartz">, "layers">
  & { readonly layers: readonly SoilLayerGiven[] };

const texture: Field<SoilTexture> = choice(
  "gravel",
  "coarse sand",
  "fine sand",
  "silt",
  "loam",
  "clay",
  "peat",
);

const layerFields: Fields<SoilLayerGiven> = {
  thickness: quantity,
  texture,
  dryDensity: open(quantity),
  moisture: open(quantity),
  quartz: open(quantity),
  measuredConductivity: quantityOr("none", null),
};

/** Keys of the section. */
export const soilFields: Fields<SoilGiven> = {
  texture,
  dryDensity: open(quantity),
  moisture: open(quantity),
  quartz: open(quantity),
  measuredConductivity: quantityOr("none", null),
  frozenConductivity: choice("modelled", "as unfrozen"),
  waterTableDepth: quantityOr("none", null),
  snowDepth: quantity,
  layers: list(layerFields),
};
