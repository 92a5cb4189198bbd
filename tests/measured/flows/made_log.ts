/** Logs made up from formulas, with sensors that err as they say. */
import { normalStream } from "../../../lib/measured/demo/dice.ts";
import type { Channel, Log, Quantity, Sensor } from "../../../lib/measured/log/types.ts";

/** One made-up sensor: what it sees at a time in s since the log began. */
export interface MadeSensor {
  readonly sensor: Partial<Sensor> & { readonly name: string; readonly quantity: Quantity };
  readonly value: (seconds: number) => number;
}

/** A log of the sensors without any fault. */
export function madeLog(
  sensors: readonly MadeSensor[],
  { start = Date.UTC(2025, 10, 1) / 1000, step = 900, count = 96 * 10 } = {},
): Log {
  const channels = sensors.map(({ sensor, value }): Channel => ({
    sensor: { logger: "one", zone: "inside", accuracy: 0, ...sensor },
    values: Float64Array.from({ length: count }, (_, k) => value(k * step)),
    flags: new Uint8Array(count),
  }));
  return { start, step, count, channels, findings: [], files: [], named: [], untested: [] };
}

/** Hour of the day at a time of the log. */
export const clock = (seconds: number): number => (seconds / 3600) % 24;

/** 1 by day, −1 by night, 0 in the two hours between. */
export function mode(seconds: number): number {
  const hour = clock(seconds);
  if (hour >= 9 && hour < 16) return 1;
  return hour >= 18 || hour < 7 ? -1 : 0;
}

/** What the air of a made-up store does. */
export const truth = {
  intake: (s: number): number => mode(s) >= 0 ? 24 + 3 * Math.sin(s / 9e4) : 4 + Math.sin(s / 7e4),
  outlet: (s: number): number => mode(s) > 0 ? 15 : mode(s) < 0 ? 9 : 14,
  intakeHumidity: (s: number): number => mode(s) > 0 ? 0.75 : 0.9,
  outletHumidity: (s: number): number => mode(s) > 0 ? 0.98 : 0.7,
  airFlow: (s: number): number => mode(s) === 0 ? 0 : 0.7,
  power: (s: number): number => mode(s) === 0 ? 0 : 180,
};

/** Standard uncertainties of the sensors of `heatSensors`. */
export const ERRORS = {
  temperature: 0.2,
  humidity: 0.02,
  airFlow: 0.03,
  power: 4,
};

/** The six sensors of the heat; with a seed each is off by an error of its own. */
export function heatSensors(seed: number | null = null): MadeSensor[] {
  const draw = seed === null ? () => 0 : normalStream(seed, "made log");
  const [bath, own, rest] = [draw(), [draw(), draw()], [draw(), draw(), draw(), draw()]];
  const probe = (k: number) =>
    ERRORS.temperature * (Math.sqrt(0.8) * bath + Math.sqrt(0.2) * own[k]!);
  const at = (zone: string) => ({ zone });
  const running = (s: number) => mode(s) === 0 ? 0 : 1;
  const temperature = { quantity: "airTemperature", accuracy: ERRORS.temperature } as const;
  const humidity = { quantity: "relativeHumidity", accuracy: ERRORS.humidity } as const;
  return [
    {
      sensor: { name: "in", ...temperature, ...at("intake"), correlatedWith: "bath" },
      value: (s) => truth.intake(s) + probe(0),
    },
    {
      sensor: { name: "inRh", ...humidity, ...at("intake") },
      value: (s) => truth.intakeHumidity(s) + ERRORS.humidity * rest[0]!,
    },
    {
      sensor: { name: "out", ...temperature, ...at("outlet"), correlatedWith: "bath" },
      value: (s) => truth.outlet(s) + probe(1),
    },
    {
      sensor: { name: "outRh", ...humidity, ...at("outlet") },
      value: (s) => truth.outletHumidity(s) + ERRORS.humidity * rest[1]!,
    },
    {
      sensor: { name: "flow", quantity: "airFlow", zone: "duct", accuracy: ERRORS.airFlow },
      value: (s) => truth.airFlow(s) + running(s) * ERRORS.airFlow * rest[2]!,
    },
    {
      sensor: { name: "power", quantity: "power", zone: "fan", accuracy: ERRORS.power },
      value: (s) => truth.power(s) + running(s) * ERRORS.power * rest[3]!,
    },
  ];
}
