/** Kinds of quantity a study file may hold, and the unit each has inside and in US tables. @module */

/** One kind of quantity. */
export interface KindOfQuantity {
  /** with its article, for messages: "a length" */
  readonly phrase: string;
  /** unit used inside the library, as the unit reader writes it; "" for a plain number */
  readonly si: string;
  /** the same for a reader: "W/(m² K)" */
  readonly siLabel: string;
  /** customary US unit, as the unit reader writes it */
  readonly us: string;
  /** the same for a reader */
  readonly usLabel: string;
  /** two ways to write such a quantity, for messages */
  readonly examples: readonly [string, string];
  /** true where only the size of a temperature interval counts, not its zero */
  readonly difference?: boolean;
  /** unit of the reciprocal, where people write that instead: a wall by its R-value */
  readonly reciprocal?: string;
}

function kind(
  phrase: string,
  si: readonly [string, string],
  us: readonly [string, string],
  examples: readonly [string, string],
  difference = false,
): KindOfQuantity {
  return { phrase, si: si[0], siLabel: si[1], us: us[0], usLabel: us[1], examples, difference };
}

/** Every kind by name. Values inside are in the unit `si`; air changes are per hour, angles degrees. */
export const KINDS = {
  length: kind("a length", ["m", "m"], ["ft", "ft"], ["26 m", "85 ft"]),
  smallLength: kind("a length", ["m", "m"], ["inch", "in"], ["0.1 m", "4 in"]),
  area: kind("an area", ["m^2", "m²"], ["ft^2", "ft²"], ["12 m2", "130 ft2"]),
  volume: kind("a volume", ["m^3", "m³"], ["gallon", "gal"], ["0.2 m3", "55 gal"]),
  speed: kind("a speed", ["m/s", "m/s"], ["ft/minute", "ft/min"], ["3 m/s", "600 fpm"]),
  airFlow: kind("an air flow", ["m^3/s", "m³/s"], ["cfm", "cfm"], ["0.5 m3/s", "1000 cfm"]),
  temperature: kind("a temperature", ["degC", "degC"], ["degF", "degF"], ["5 degC", "41 degF"]),
  temperatureDifference: kind(
    "a temperature difference",
    ["K", "K"],
    ["degF", "degF"],
    ["5 K", "9 degF"],
    true,
  ),
  conductivity: kind(
    "a thermal conductivity",
    ["W/(m K)", "W/(m K)"],
    ["BTU/(hour ft degF)", "Btu/(h ft degF)"],
    ["1.4 W/(m K)", "0.8 Btu/(h ft degF)"],
    true,
  ),
  transmittance: {
    ...kind(
      "a thermal transmittance (U-value)",
      ["W/(m^2 K)", "W/(m² K)"],
      ["BTU/(hour ft^2 degF)", "Btu/(h ft² degF)"],
      ["0.3 W/(m2 K)", "0.05 Btu/(h ft2 degF)"],
      true,
    ),
    reciprocal: "m^2 K/W",
  },
  resistance: kind(
    "a thermal resistance",
    ["m^2 K/W", "m² K/W"],
    ["hour ft^2 degF/BTU", "h ft² degF/Btu"],
    ["1.8 m2 K/W", "10 h ft2 degF/Btu"],
    true,
  ),
  conductance: kind(
    "a thermal conductance",
    ["W/K", "W/K"],
    ["BTU/(hour degF)", "Btu/(h degF)"],
    ["500 W/K", "950 Btu/(h degF)"],
    true,
  ),
  density: kind("a density", ["kg/m^3", "kg/m³"], ["lb/ft^3", "lb/ft³"], [
    "1500 kg/m3",
    "94 lb/ft3",
  ]),
  volumetricHeatCapacity: kind(
    "a heat capacity by volume",
    ["J/(m^3 K)", "J/(m³ K)"],
    ["BTU/(ft^3 degF)", "Btu/(ft³ degF)"],
    ["2.2 MJ/(m3 K)", "33 Btu/(ft3 degF)"],
    true,
  ),
  heatCapacity: kind(
    "a specific heat capacity",
    ["J/(kg K)", "J/(kg K)"],
    ["BTU/(lb degF)", "Btu/(lb degF)"],
    ["840 J/(kg K)", "0.2 Btu/(lb degF)"],
    true,
  ),
  diffusivity: kind("a thermal diffusivity", ["m^2/s", "m²/s"], ["ft^2/day", "ft²/day"], [
    "6e-7 m2/s",
    "0.56 ft2/day",
  ]),
  power: kind("a power", ["W", "W"], ["BTU/hour", "Btu/h"], ["3 kW", "10000 Btu/h"]),
  energy: kind("an amount of energy", ["kWh", "kWh"], ["therm", "therm"], ["500 kWh", "17 therm"]),
  heatFlux: kind("a heat flux or radiation", ["W/m^2", "W/m²"], [
    "BTU/(hour ft^2)",
    "Btu/(h ft²)",
  ], ["20 W/m2", "6 Btu/(h ft2)"]),
  pressure: kind("a pressure", ["Pa", "Pa"], ["inH2O", "inH2O"], ["25 Pa", "0.1 inH2O"]),
  airChange: kind("a number of air changes", ["ach", "1/h"], ["ach", "1/h"], [
    "0.5 1/h",
    "0.5 ach",
  ]),
  airChangePerSpeed: kind(
    "air changes for each unit of wind speed",
    ["ach/(m/s)", "(1/h)/(m/s)"],
    ["ach/mph", "(1/h)/mph"],
    ["0.1 ach/(m/s)", "0.05 ach/mph"],
  ),
  time: kind("a time", ["s", "s"], ["minute", "min"], ["15 min", "900 s"]),
  mass: kind("a mass", ["kg", "kg"], ["lb", "lb"], ["10 kg", "22 lb"]),
  angle: kind("an angle", ["deg", "deg"], ["deg", "deg"], ["30 deg", "180 deg"]),
  share: kind("a share", ["", ""], ["", ""], ["30 %", "0.3"]),
  number: kind("a plain number", ["", ""], ["", ""], ["12", "1.5"]),
} as const satisfies Record<string, KindOfQuantity>;

/** Name of a kind of quantity. */
export type Kind = keyof typeof KINDS;

/**
 * The description of a kind.
 *
 * @param name of the kind
 * @returns its inside unit and the units it may be written in
 */
export function kindOf(name: Kind): KindOfQuantity {
  return KINDS[name];
}
