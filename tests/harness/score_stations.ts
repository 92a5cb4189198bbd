/**
 * Scores the undisturbed ground at daily station files, or at the stations of the open data:
 * `deno run -A tests/harness/score_stations.ts FILE...` prints measured and predicted side by side,
 * `OPEN_DATA=… deno run -A tests/harness/score_stations.ts` prints data/soils/station_scores.csv.
 *
 * @module
 */
import {
  measuredFrost,
  readStation,
  readStationYear,
  scoreStation,
  stationGround,
  STATIONS,
} from "./uscrn.ts";

const SHOWN_DEPTHS = [5, 50, 100];
/** cm: depths of the table the doubt of the ground is made from */
const PRIOR_DEPTHS = [20, 50, 100];

/** One line for the reader. */
function scoreLine(file: string, depth: number): string {
  const { measured, predicted } = scoreStation(readStationYear(Deno.readTextFileSync(file)), depth);
  return [
    file.split("/").at(-1),
    depth,
    measured.mean.toFixed(2),
    (predicted.mean - measured.mean).toFixed(2),
    measured.amplitude.toFixed(2),
    (predicted.amplitude / measured.amplitude).toFixed(2),
  ].join("\t");
}

const HEAD = "station,depth (m),mean_measured (degC),mean_error (K),lowest_measured (degC)," +
  "lowest_error (K),highest_measured (degC),highest_error (K),frost_measured (m)," +
  "frost_computed (m),source";
const SOURCE =
  "own score on NOAA NCEI records of 2020 [diamond-2013]: tests/outside/soil_prior_test.ts";

/** The table data/soils/station_scores.csv; errors are computed less measured. */
export function scoreTable(folder: string): string {
  const lines = STATIONS.flatMap(([file, name, elevation]) => {
    const station = readStation(folder, file, elevation);
    const ground = stationGround(station);
    const frost = [measuredFrost(station), ground.frostDepth].map((depth) => depth.toFixed(2));
    return PRIOR_DEPTHS.map((depth) => {
      const { measured, predicted } = scoreStation(station, depth, ground);
      const pair = (
        key: "mean" | "lowest" | "highest",
      ) => [measured[key].toFixed(2), (predicted[key] - measured[key]).toFixed(2)];
      return [
        name,
        (depth / 100).toFixed(1),
        ...pair("mean"),
        ...pair("lowest"),
        ...pair("highest"),
        ...frost,
        SOURCE,
      ].join(",");
    });
  });
  return [HEAD, ...lines, ""].join("\n");
}

if (import.meta.main) {
  const head =
    "file\tdepth (cm)\tmean (degC)\terror (K)\tamplitude (K)\tpredicted over measured (1)";
  const text = Deno.args.length === 0 ? scoreTable(Deno.env.get("OPEN_DATA")!) : [
    head,
    ...Deno.args.flatMap((file) => SHOWN_DEPTHS.map((depth) => scoreLine(file, depth))),
    "",
  ].join("\n");
  Deno.stdout.writeSync(new TextEncoder().encode(text));
}
