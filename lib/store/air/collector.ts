/** A perforated dark plate through which the charging air is drawn. @module */
import { requireInRange, STEFAN_BOLTZMANN, ZERO_CELSIUS } from "../../basics/mod.ts";

/** Plate of the collector. */
export interface PlateCollector {
  /** in the house behind its glazing, or outdoors in a glazed box of its own */
  readonly place: "inside" | "outside";
  /** m² */
  readonly area: number;
  /** degrees from level */
  readonly tilt: number;
  /** degrees clockwise from north; absent: the way the house faces */
  readonly azimuth: number | undefined;
  /** id in data/glazings of the box outdoors */
  readonly cover: string;
  /** m of duct outdoors, both ways together */
  readonly ductLength: number;
  /** W/(m K) that the duct loses to outdoors */
  readonly ductLoss: number;
  /** m */
  readonly holeDiameter: number;
  /** m between holes, triangular */
  readonly pitch: number;
  /** of sunlight, 0 to 1 */
  readonly absorptance: number;
  /** long-wave, 0 to 1 */
  readonly emissivity: number;
}

/** m/s towards a plate, in the middle of what its relation was measured at. */
export const USUAL_SUCTION = 0.05;

/**
 * The plate that is tried where a study has none: on the back wall behind the glazing, the one whose
 * values data/studies/fields.csv gives a collector by default.
 *
 * @param area m²
 */
export function usualCollector(area: number): PlateCollector {
  return {
    place: "inside",
    area,
    tilt: 90,
    azimuth: undefined,
    cover: "single-glass",
    ductLength: 4,
    ductLoss: 0.6,
    holeDiameter: 1.6e-3,
    pitch: 17e-3,
    absorptance: 0.95,
    emissivity: 0.9,
  };
}

/** Air at the plate. */
export interface PlateAir {
  /** m/s towards the plate: air flow over plate area */
  readonly suction: number;
  /** m/s along the plate */
  readonly crosswind: number;
  /** kg/m³ */
  readonly density: number;
  /** m²/s */
  readonly kinematicViscosity: number;
  /** W/(m K) */
  readonly conductivity: number;
  /** J/(kg K) */
  readonly heatCapacity: number;
}

/** What the plate does to the air. */
export interface PlateTransfer {
  /** open share of the plate */
  readonly porosity: number;
  /** Nusselt number on the hole diameter */
  readonly nusselt: number;
  /** 0 to 1: air's rise over the plate's lead on the air */
  readonly effectiveness: number;
}

/** What the exchange of heat in the holes depends on. */
export type PlateHoles = Pick<PlateCollector, "holeDiameter" | "pitch">;

/** Distance of the holes over their diameter, least and most, that the relation can be stretched to. */
export const PITCH_RATIO = [2, 40] as const;

/**
 * Heat exchange of a perforated plate with the air drawn through it,
 * Nu = 2.75·[(P/D)^(−1.2)·Re^0.43 + 0.011·σ·Re·(U∞/V₀)^0.48], Re = V₀D/(σν),
 * ε = 1 − exp[−U(1 − σ)/(ρcV₀)], σ = π/(2√3)·(D/P)² for triangular pitch.
 *
 * Source: Kutscher 1994 [kutscher-1994] (from memory). Laminar holes, thin plates, suction 0.02 to
 * 0.1 m/s.
 *
 * @param plate diameter of the holes and their triangular pitch, m; pitch 2 to 40 diameters
 * @param air speeds in m/s, suction 0.001 to 1, and properties of the air
 * @returns open share, Nusselt number and effectiveness, each as a ratio
 * @throws {OutOfRangeError} outside those ranges
 */
export function plateTransfer(
  plate: PlateHoles,
  air: PlateAir,
): PlateTransfer {
  requireInRange("pitch over hole diameter", plate.pitch / plate.holeDiameter, ...PITCH_RATIO, "1");
  requireInRange("suction of the plate", air.suction, 1e-3, 1, "m/s");
  const ratio = plate.pitch / plate.holeDiameter;
  const porosity = Math.PI / (2 * Math.sqrt(3)) / ratio ** 2;
  const reynolds = air.suction * plate.holeDiameter / (porosity * air.kinematicViscosity);
  const nusselt = 2.75 * (ratio ** -1.2 * reynolds ** 0.43 +
    0.011 * porosity * reynolds * (air.crosswind / air.suction) ** 0.48);
  const film = nusselt * air.conductivity / plate.holeDiameter;
  const units = film * (1 - porosity) / (air.density * air.heatCapacity * air.suction);
  return { porosity, nusselt, effectiveness: -Math.expm1(-units) };
}

/**
 * Share of the sun on the plate that ends in the air drawn through it,
 * η = α/[1 + h_r/(ε·ρcV₀)], radiation h_r = 4·e·σ·T³ to the house at the air's temperature; no wind
 * loss indoors.
 *
 * Source: Kutscher, Christensen & Barker 1993 [kutscher-1993] (from memory).
 *
 * @param temperature degC of the air drawn in
 * @param plate holes, absorptance and emissivity
 * @param air speeds in m/s and properties of the air
 * @returns 0 to 1
 */
export function plateEfficiency(
  plate: PlateHoles & Pick<PlateCollector, "absorptance" | "emissivity">,
  air: PlateAir,
  temperature: number,
): number {
  const { effectiveness } = plateTransfer(plate, air);
  const radiation = 4 * plate.emissivity * STEFAN_BOLTZMANN * (temperature + ZERO_CELSIUS) ** 3;
  const stream = air.density * air.heatCapacity * air.suction;
  return plate.absorptance / (1 + radiation / (effectiveness * stream));
}
