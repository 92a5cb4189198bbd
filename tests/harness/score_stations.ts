/**
 * Prints measured and predicted ground temperature for daily station files:
 * `deno run -A tests/harness/score_stations.ts FILE...`
 *
 * @module
 */
import { readStationYear, scoreStation } from "./uscrn.ts";

const DEPTHS = [5, 50, 100];

/** One line of the table. */
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

if (import.meta.main) {
  const head =
    "file\tdepth (cm)\tmean (degC)\terror (K)\tamplitude (K)\tpredicted over measured (1)";
  const lines = Deno.args.flatMap((file) => DEPTHS.map((depth) => scoreLine(file, depth)));
  Deno.stdout.writeSync(new TextEncoder().encode([head, ...lines, ""].join("\n")));
}
