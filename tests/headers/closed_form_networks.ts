/** Frictionless headers for comparison with closed forms. */
import type { HeaderLine, HeaderNetwork, JunctionModel } from "../../lib/headers/mod.ts";

/** Air of 1.2 kg/m³. */
export const AIR = {
  density: 1.2,
  viscosity: 1.8e-5,
  conductivity: 0.0257,
  heatCapacity: 1006,
  prandtl: 0.71,
};

/** What the closed forms are written in. */
export interface ClosedFormCase {
  readonly count: number;
  /** all tubes' area over the header's */
  readonly areaRatio: number;
  /** velocity heads of a tube */
  readonly loss: number;
  readonly dividing: number;
  readonly combining: number;
  readonly arrangement: "dividing" | "Z" | "U";
}

/** Network of a closed-form case; header area 1 m². */
export function closedFormNetwork(given: ClosedFormCase): HeaderNetwork {
  const diameter = Math.sqrt(4 / Math.PI);
  const tubeDiameter = Math.sqrt(4 / Math.PI * given.areaRatio / given.count);
  const junctions: JunctionModel = {
    id: "closed-form",
    name: "closed form",
    dividingRegain: given.dividing,
    dividingRunLoss: 0,
    combiningRegain: given.combining,
    combiningRunLoss: 0,
    source: "test",
  };
  const line = (after: number): HeaderLine => ({
    diameters: new Array<number>(given.count).fill(diameter),
    roughness: 0,
    manning: null,
    frictionFactor: 0,
    obstructions: null,
    ports: [{ after, share: 1 }],
    lead: 0,
  });
  return {
    tubes: Array.from({ length: given.count }, (_, i) => ({
      position: i / given.count,
      diameter: tubeDiameter,
      roughness: 0,
      manning: null,
      length: 0,
      minorLoss: given.loss,
      frictionFactor: 0,
      open: true,
    })),
    supply: line(0),
    return: given.arrangement === "dividing"
      ? null
      : line(given.arrangement === "Z" ? given.count : 0),
    junctions,
    air: AIR,
  };
}
