/**
 * Kinds of quantity: the unit each has inside the library, the units people write it in, and the
 * units and decimals it is shown with, in SI and in US use. The one table of them.
 *
 * @module
 */

/** A unit as the unit reader writes it, as a reader writes it, and the decimals shown in it. */
export type ShownUnit = readonly [unit: string, label: string, digits: number];

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
  /** how it is shown; `us` is null where US use has no unit of its own */
  readonly shown: { readonly si: ShownUnit; readonly us: ShownUnit | null };
  /** true where only the size of a temperature interval counts, not its zero */
  readonly difference?: boolean;
  /** unit of the reciprocal, where people write that instead: a wall by its R-value */
  readonly reciprocal?: string;
}

/** Units a quantity is written in, with the decimals it is shown with, unless `shown` says others. */
interface Written {
  readonly si: ShownUnit;
  readonly us: ShownUnit;
  readonly examples: readonly [string, string];
  readonly shown?: { readonly si?: ShownUnit; readonly us?: ShownUnit | null };
}

function kind(phrase: string, written: Written): KindOfQuantity {
  const { si, us, examples, shown } = written;
  return {
    phrase,
    si: si[0],
    siLabel: si[1],
    us: us[0],
    usLabel: us[1],
    examples,
    shown: { si: shown?.si ?? si, us: shown?.us === undefined ? us : shown.us },
  };
}

/** A kind in whose unit a kelvin or a degree stands for an interval. */
function perKelvin(phrase: string, written: Written): KindOfQuantity {
  return { ...kind(phrase, written), difference: true };
}

/** A kind with one unit everywhere. */
function alike(phrase: string, unit: ShownUnit, examples: Written["examples"]): KindOfQuantity {
  return kind(phrase, { si: unit, us: unit, examples, shown: { us: null } });
}

/** A pure number; a share is written and shown in per cent. */
function pure(
  phrase: string,
  label: string,
  digits: number,
  examples: Written["examples"],
): KindOfQuantity {
  return kind(phrase, {
    si: ["", "", digits],
    us: ["", "", digits],
    examples,
    shown: { si: ["", label, digits], us: null },
  });
}

/**
 * Every kind by name. Values inside are in the unit `si`; air changes are per hour, angles degrees.
 *
 * The sizes of the units are the unit library's; `tests/units` holds them against NIST SP 811
 * (2008) [nist-sp811-2008].
 */
export const KINDS = {
  temperature: kind("a temperature", {
    si: ["degC", "degC", 1],
    us: ["degF", "degF", 1],
    examples: ["5 degC", "41 degF"],
  }),
  temperatureDifference: perKelvin("a temperature difference", {
    si: ["K", "K", 1],
    us: ["degF", "degF", 1],
    examples: ["5 K", "9 degF"],
  }),
  length: kind("a length", {
    si: ["m", "m", 1],
    us: ["ft", "ft", 1],
    examples: ["26 m", "85 ft"],
  }),
  depth: kind("a depth", {
    si: ["m", "m", 2],
    us: ["ft", "ft", 2],
    examples: ["1.2 m", "4 ft"],
  }),
  smallLength: kind("a length", {
    si: ["m", "m", 3],
    us: ["inch", "in", 1],
    examples: ["0.1 m", "4 in"],
    shown: { si: ["mm", "mm", 0] },
  }),
  area: kind("an area", {
    si: ["m^2", "m²", 1],
    us: ["ft^2", "ft²", 0],
    examples: ["12 m2", "130 ft2"],
  }),
  volume: kind("a volume", {
    si: ["m^3", "m³", 0],
    us: ["gallon", "gal", 0],
    examples: ["0.2 m3", "55 gal"],
    shown: { us: ["ft^3", "ft³", 0] },
  }),
  airFlow: kind("an air flow", {
    si: ["m^3/s", "m³/s", 3],
    us: ["cfm", "cfm", 0],
    examples: ["0.5 m3/s", "1000 cfm"],
  }),
  tubeFlow: kind("the air flow of a tube", {
    si: ["m^3/s", "m³/s", 4],
    us: ["cfm", "cfm", 1],
    examples: ["0.01 m3/s", "20 cfm"],
    shown: { si: ["liter/s", "L/s", 1] },
  }),
  speed: kind("a speed", {
    si: ["m/s", "m/s", 2],
    us: ["ft/minute", "ft/min", 0],
    examples: ["3 m/s", "600 fpm"],
  }),
  windSpeed: kind("a wind speed", {
    si: ["m/s", "m/s", 1],
    us: ["mph", "mph", 1],
    examples: ["3 m/s", "7 mph"],
  }),
  pressure: kind("a pressure", {
    si: ["Pa", "Pa", 1],
    us: ["inH2O", "inH2O", 3],
    examples: ["25 Pa", "0.1 inH2O"],
    shown: { us: ["inH2O", "in wg", 3] },
  }),
  density: kind("a density", {
    si: ["kg/m^3", "kg/m³", 3],
    us: ["lb/ft^3", "lb/ft³", 4],
    examples: ["1500 kg/m3", "94 lb/ft3"],
  }),
  soilDensity: kind("a density", {
    si: ["kg/m^3", "kg/m³", 0],
    us: ["lb/ft^3", "lb/ft³", 1],
    examples: ["1500 kg/m3", "94 lb/ft3"],
  }),
  mass: kind("a mass", { si: ["kg", "kg", 0], us: ["lb", "lb", 0], examples: ["10 kg", "22 lb"] }),
  power: kind("a power", {
    si: ["W", "W", 0],
    us: ["BTU/hour", "Btu/h", 0],
    examples: ["3 kW", "10000 Btu/h"],
  }),
  heatFlow: kind("a heat flow", {
    si: ["W", "W", 0],
    us: ["BTU/hour", "Btu/h", 0],
    examples: ["3 kW", "10000 Btu/h"],
    shown: { si: ["kW", "kW", 2], us: ["kBTU/hour", "kBtu/h", 1] },
  }),
  energy: kind("an amount of energy", {
    si: ["kWh", "kWh", 0],
    us: ["therm", "therm", 1],
    examples: ["500 kWh", "17 therm"],
    shown: { us: ["kBTU", "kBtu", 0] },
  }),
  electricity: alike("an amount of electricity", ["kWh", "kWh", 0], ["500 kWh", "1 MWh"]),
  radiation: kind("an amount of radiation", {
    si: ["kWh/m^2", "kWh/m²", 1],
    us: ["kBTU/ft^2", "kBtu/ft²", 1],
    examples: ["1300 kWh/m2", "410 kBtu/ft2"],
  }),
  energyPerArea: kind("an amount of energy per unit area", {
    si: ["kWh/m^2", "kWh/m²", 2],
    us: ["kBTU/ft^2", "kBtu/ft²", 2],
    examples: ["40 kWh/m2", "13 kBtu/ft2"],
  }),
  dailyRadiation: kind("a daily amount of radiation", {
    si: ["kWh/(m^2 day)", "kWh/(m² d)", 2],
    us: ["kBTU/(ft^2 day)", "kBtu/(ft² d)", 2],
    examples: ["3 kWh/(m2 d)", "1 kBtu/(ft2 d)"],
  }),
  heatFlux: kind("a heat flux or radiation", {
    si: ["W/m^2", "W/m²", 0],
    us: ["BTU/(hour ft^2)", "Btu/(h ft²)", 1],
    examples: ["20 W/m2", "6 Btu/(h ft2)"],
  }),
  heatPerLength: kind("a heat flow per unit length", {
    si: ["W/m", "W/m", 1],
    us: ["BTU/(hour ft)", "Btu/(h ft)", 1],
    examples: ["20 W/m", "20 Btu/(h ft)"],
  }),
  conductance: perKelvin("a thermal conductance", {
    si: ["W/K", "W/K", 0],
    us: ["BTU/(hour degF)", "Btu/(h degF)", 0],
    examples: ["500 W/K", "950 Btu/(h degF)"],
  }),
  transmittance: {
    ...perKelvin("a thermal transmittance (U-value)", {
      si: ["W/(m^2 K)", "W/(m² K)", 2],
      us: ["BTU/(hour ft^2 degF)", "Btu/(h ft² degF)", 3],
      examples: ["0.3 W/(m2 K)", "0.05 Btu/(h ft2 degF)"],
    }),
    reciprocal: "m^2 K/W",
  },
  resistance: perKelvin("a thermal resistance", {
    si: ["m^2 K/W", "m² K/W", 2],
    us: ["hour ft^2 degF/BTU", "h ft² degF/Btu", 1],
    examples: ["1.8 m2 K/W", "10 h ft2 degF/Btu"],
  }),
  conductivity: perKelvin("a thermal conductivity", {
    si: ["W/(m K)", "W/(m K)", 2],
    us: ["BTU/(hour ft degF)", "Btu/(h ft degF)", 2],
    examples: ["1.4 W/(m K)", "0.8 Btu/(h ft degF)"],
  }),
  heatCapacity: perKelvin("a specific heat capacity", {
    si: ["J/(kg K)", "J/(kg K)", 0],
    us: ["BTU/(lb degF)", "Btu/(lb degF)", 3],
    examples: ["840 J/(kg K)", "0.2 Btu/(lb degF)"],
  }),
  volumetricHeatCapacity: perKelvin("a volumetric heat capacity", {
    si: ["J/(m^3 K)", "J/(m³ K)", 0],
    us: ["BTU/(ft^3 degF)", "Btu/(ft³ degF)", 1],
    examples: ["2.2 MJ/(m3 K)", "33 Btu/(ft3 degF)"],
    shown: { si: ["MJ/(m^3 K)", "MJ/(m³ K)", 2] },
  }),
  latentHeat: kind("a latent heat by volume", {
    si: ["J/m^3", "J/m³", 0],
    us: ["BTU/ft^3", "Btu/ft³", 0],
    examples: ["84 MJ/m3", "2250 Btu/ft3"],
    shown: { si: ["MJ/m^3", "MJ/m³", 1] },
  }),
  diffusivity: kind("a thermal diffusivity", {
    si: ["m^2/s", "m²/s", 8],
    us: ["ft^2/day", "ft²/day", 2],
    examples: ["6e-7 m2/s", "0.56 ft2/day"],
    shown: { si: ["mm^2/s", "mm²/s", 2], us: ["ft^2/day", "ft²/d", 2] },
  }),
  degreeDays: perKelvin("a number of degree-days", {
    si: ["K day", "K d", 0],
    us: ["degF day", "degF d", 0],
    examples: ["3800 K d", "6840 degF d"],
  }),
  specificPower: kind("a specific fan power", {
    si: ["W s/m^3", "W/(m³/s)", 0],
    us: ["W/cfm", "W/cfm", 2],
    examples: ["800 W/(m3/s)", "0.4 W/cfm"],
  }),
  airChange: alike("a number of air changes", ["ach", "1/h", 2], ["0.5 1/h", "0.5 ach"]),
  airChangePerSpeed: kind("air changes for each unit of wind speed", {
    si: ["ach/(m/s)", "(1/h)/(m/s)", 3],
    us: ["ach/mph", "(1/h)/mph", 3],
    examples: ["0.1 ach/(m/s)", "0.05 ach/mph"],
  }),
  time: kind("a time", {
    si: ["s", "s", 0],
    us: ["minute", "min", 1],
    examples: ["15 min", "900 s"],
    shown: { us: null },
  }),
  hours: alike("a number of hours", ["hour", "h", 0], ["744 h", "31 d"]),
  days: alike("a number of days", ["day", "d", 0], ["26 d", "624 h"]),
  angle: alike("an angle", ["deg", "deg", 0], ["30 deg", "180 deg"]),
  share: pure("a share", "%", 0, ["30 %", "0.3"]),
  sharePrecise: pure("a share", "%", 1, ["30 %", "0.3"]),
  ratio: pure("a ratio", "–", 2, ["1.5", "12"]),
  count: pure("a number of things", "–", 0, ["12", "1"]),
  number: pure("a plain number", "–", 2, ["12", "1.5"]),
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
