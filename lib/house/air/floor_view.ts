/** What the floor sees of the cover and, through clear film, of the sky. @module */
import { INSIDE_CONVECTION } from "../skin/films.ts";
import type { HouseBoundary, HouseModel } from "../types.ts";

/**
 * The floor's own loss by radiation, all linear, next to the plain exchange with the air
 * (T air, D floor surface above air):
 * loss of the floor R = fixed + perAir·T + perRise·D, and by reciprocity perAir·D more through the skin
 * than the air alone would lose.
 *
 * The plain film has the floor radiate to the air's node. Its open part w sees the cover instead
 * (K = A·w·h_r) and the sky behind clear film (w of φ·T + φ₀). The cover's inner face lies s of the
 * way from air to outside; K warms it by κ·D, κ = K(1 − s)/(h·A).
 */
export interface FloorView {
  /** W */
  readonly fixed: number;
  /** W/K */
  readonly perAir: number;
  /** W/K */
  readonly perRise: number;
  /** share of the floor's film that the soil's answer takes, 0 to 1 */
  readonly soil: number;
  /** 1 + (1 − soil)·perRise/film */
  readonly held: number;
}

/** Skin of one step, W/K, degC and W, as the terms of the step hold it. */
export interface SkinTerms {
  readonly glazing: number;
  readonly glazingDriving: number;
  readonly coverShare: number;
  readonly filmSlope: number;
  readonly filmConstant: number;
}

/**
 * Gathers the floor's view for one step.
 *
 * @param model the house
 * @param hour index
 * @param skin glazing of the hour
 * @param boundary soil of the step
 */
export function floorView(
  model: HouseModel,
  hour: number,
  skin: SkinTerms,
  boundary: HouseBoundary,
): FloorView {
  const view = model.floorView[hour]!;
  const film = model.surfaceFilm * model.geometry.floorArea;
  const soil = Math.min(1, boundary.floorConductance / film);
  const radiation = Math.max(0, model.coverFilm - INSIDE_CONVECTION);
  const toCover = model.coverArea * view * radiation;
  const { coverShare: share, filmSlope, filmConstant } = skin;
  const back = toCover > 0
    ? toCover * toCover * (1 - share) / (model.coverFilm * model.coverArea)
    : 0;
  const perRise = view * filmSlope - back;
  return {
    fixed: view * filmConstant - toCover * share * skin.glazingDriving,
    perAir: view * filmSlope + toCover * share,
    perRise,
    soil,
    held: 1 + (1 - soil) * perRise / film,
  };
}
