/** The fan taken where the study names none. @module */
import { FANS, findFan } from "./products.ts";
import type { FanCurve } from "./types.ts";

/** Fans of one kind side by side. */
export interface FanChoice {
  /** id in data/fans */
  readonly fan: string;
  readonly count: number;
}

/** Pa the fan must still give at its share of the design flow. Common practice, no source. */
const PRESSURE = 100;
/** More fans side by side than this are not proposed. */
const MOST_FANS = 20;

/** m³/s one fan moves against {@link PRESSURE}; 0 where it never gives as much. */
function flowAgainst(curve: FanCurve): number {
  const { airFlow, staticPressure } = curve;
  for (let index = airFlow.length - 1; index > 0; index--) {
    const low = staticPressure[index]!;
    const high = staticPressure[index - 1]!;
    if (low > PRESSURE || high < PRESSURE) continue;
    const part = high === low ? 0 : (PRESSURE - low) / (high - low);
    return airFlow[index]! + part * (airFlow[index - 1]! - airFlow[index]!);
  }
  return 0;
}

/**
 * Fewest fans that move an air flow against 100 Pa; among those the smallest fan.
 *
 * @param airFlow m³/s
 * @param fan id of the kind to count, any kind of the catalogue unless given
 * @param fans the catalogue; data/fans unless given
 */
export function chooseFan(
  airFlow: number,
  fan?: string,
  fans: readonly FanCurve[] = FANS,
): FanChoice {
  const curves = fan === undefined ? fans : [findFan(fan, fans)];
  const choices = curves.map((curve) => {
    const each = flowAgainst(curve);
    const count = each > 0 ? Math.ceil(airFlow / each - 1e-9) : MOST_FANS;
    return { fan: curve.id, count: Math.min(MOST_FANS, Math.max(1, count)), each };
  });
  choices.sort((one, other) => one.count - other.count || one.each - other.each);
  return { fan: choices[0]!.fan, count: choices[0]!.count };
}
