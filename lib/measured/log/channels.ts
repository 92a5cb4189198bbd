/** Channels of a log by what and where they measure, and their values free of faults. @module */
import { type Channel, type Log, LOG_FLAGS, type LogFlag, type Quantity } from "./types.ts";

/**
 * The channels of a quantity, of one zone where it is given.
 *
 * @param log to look in
 * @param quantity what they measure
 * @param zone where; any where it is left out
 */
export function channelsOf(log: Log, quantity: Quantity, zone?: string): Channel[] {
  return log.channels.filter(({ sensor }) =>
    sensor.quantity === quantity && (zone === undefined || sensor.zone === zone)
  );
}

/**
 * Values of a channel with NaN wherever a flag is set.
 *
 * @param channel of a log
 * @param but flags that do not matter here
 * @returns SI values as in the channel, or NaN
 */
export function soundValues(channel: Channel, but: readonly LogFlag[] = []): Float64Array {
  const allowed = but.reduce((bits, flag) => bits | LOG_FLAGS[flag], 0);
  return channel.values.map((value, i) => (channel.flags[i]! & ~allowed) === 0 ? value : NaN);
}
