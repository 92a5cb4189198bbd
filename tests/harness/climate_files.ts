/** Small climate files for tests, made here and thrown away. @module */

/** A columns file for {@link plainYear}. */
export const PLAIN_COLUMNS = `header: true
place: {name: Testfield, latitude: 47, longitude: -97, elevation: 270 m, timeZone: -6}
time:
  stamp: start
  read:
    - {column: date, format: YYYY-MM-DD}
    - {column: time, format: "HH:mm"}
columns:
  dryBulb: {column: temperature, unit: degC}
  relativeHumidity: {column: humidity, unit: "%"}
  globalHorizontal: {column: global, unit: W/m2}
`;

/** Rows of a plausible cold year, one an hour: date, time, temperature, humidity, global. */
export function plainYear(): string[] {
  const rows = ["date,time,temperature,humidity,global"];
  for (let hour = 0; hour < 8760; hour++) {
    const moment = new Date(Date.UTC(2001, 0, 1, hour)).toISOString();
    const day = hour / 24;
    const clock = hour % 24 + 0.5;
    const season = Math.cos(2 * Math.PI * (day - 20) / 365);
    const temperature = 5 - 17 * season + 4 * Math.cos(2 * Math.PI * (clock - 15) / 24) +
      3 * Math.sin(day * 1.7);
    const halfDay = 6 - 2.2 * season;
    const height = Math.max(0, Math.cos(Math.PI * (clock - 12.5) / (2 * halfDay)));
    const lit = Math.abs(clock - 12.5) < halfDay ? height : 0;
    const global = lit * (420 - 220 * season);
    rows.push(
      [
        moment.slice(0, 10),
        moment.slice(11, 16),
        temperature.toFixed(1),
        (70 + 5 * Math.sin(hour)).toFixed(0),
        global.toFixed(0),
      ].join(","),
    );
  }
  return rows;
}
