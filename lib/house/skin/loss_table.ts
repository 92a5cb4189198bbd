/** Where the heat goes: the loss coefficient part by part. @module */
import { nightConductance } from "./losses.ts";
import type { HouseInputs, HouseResult, SkinPart } from "../types.ts";

/** One line of the table of losses. */
export interface LossRow {
  /** name for the reader */
  readonly name: string;
  /** glazed or opaque skin, air or ground */
  readonly kind: SkinPart["kind"] | "air" | "ground";
  /** m²; null for leakage and floor edge */
  readonly area: number | null;
  /** W/(m² K), curtain open; null for leakage and floor edge */
  readonly transmittance: number | null;
  /** W/K as at night */
  readonly conductance: number;
}

/**
 * Each surface of the skin with its loss as at night, then leakage and floor edge; together they are
 * the loss coefficient.
 *
 * @param result of the house chapter
 * @param inputs house section of the study
 */
export function lossRows(
  { geometry, lossParts }: Pick<HouseResult, "geometry" | "lossParts">,
  inputs: HouseInputs,
): LossRow[] {
  const skin = geometry.parts.filter((part) => part.area > 0).map((part): LossRow => ({
    name: part.name,
    kind: part.kind,
    area: part.area,
    transmittance: part.transmittanceHeat,
    conductance: nightConductance(part, inputs, geometry),
  }));
  const others = lossParts.slice(-2).map(({ id, name, conductance }): LossRow => ({
    name,
    kind: id === "leakage" ? "air" : "ground",
    area: null,
    transmittance: null,
    conductance,
  }));
  return [...skin, ...others];
}

/** A part of the loss coefficient and its share. */
export interface LossShare {
  /** name for the reader */
  readonly name: string;
  /** W/K */
  readonly conductance: number;
  /** of the loss coefficient, 0 to 1 */
  readonly share: number;
}

/**
 * Parts of the loss coefficient in the order of the chapter, each with its share.
 *
 * @param result of the house chapter
 */
export function lossShares(
  { lossParts, lossCoefficient }: Pick<HouseResult, "lossParts" | "lossCoefficient">,
): LossShare[] {
  return lossParts.map(({ name, conductance }) => ({
    name,
    conductance,
    share: conductance / lossCoefficient,
  }));
}

/**
 * Loss coefficient with the leakage, the least known part, at half and at twice its value.
 *
 * @param result of the house chapter
 * @returns W/K at half and at twice the leakage
 */
export function leakageRange(
  { lossParts, lossCoefficient }: Pick<HouseResult, "lossParts" | "lossCoefficient">,
): readonly [number, number] {
  const leak = lossParts.find(({ id }) => id === "leakage")?.conductance ?? 0;
  const loss = (factor: number) => lossCoefficient + (factor - 1) * leak;
  return [loss(0.5), loss(2)];
}

/** m² of the skin that lets light through, and of the rest. */
export interface SkinAreas {
  /** m² */
  readonly glazed: number;
  /** m² */
  readonly opaque: number;
}

/**
 * Areas of the skin.
 *
 * @param parts surfaces of the skin, m²
 */
export function skinAreas(parts: readonly Pick<SkinPart, "kind" | "area">[]): SkinAreas {
  const area = (kind: SkinPart["kind"]) =>
    parts.filter((part) => part.kind === kind).reduce((sum, part) => sum + part.area, 0);
  return { glazed: area("glazed"), opaque: area("opaque") };
}
