// Source: US Climate Reference Network daily records 2020, NOAA NCEI (Diamond et al. 2013
// [diamond-2013])
import { assertLess } from "@std/assert";
import { readStationYear, scoreStation } from "../harness/uscrn.ts";

const OPEN_DATA = Deno.env.get("OPEN_DATA");
/** file, then the elevation of the station in m (from memory, 10 m matter nothing) */
const STATIONS: readonly [string, number][] = [
  ["nd_northgate_5_ese", 565],
  ["sd_aberdeen_35_wnw", 597],
  ["ne_lincoln_8_ene", 362],
  ["co_la_junta_17_wsw", 1340],
  ["mt_wolf_point_29_ene", 636],
];
const SKIPPED = OPEN_DATA === undefined ? " (skipped: OPEN_DATA is not set)" : "";

for (const [name, elevation] of STATIONS) {
  Deno.test({
    name: `USCRN 2020 ${name}: mean within 1.0 K and amplitude within 25 % at 100 cm${SKIPPED}`,
    ignore: OPEN_DATA === undefined,
    fn() {
      const text = Deno.readTextFileSync(`${OPEN_DATA}/soil/uscrn_2020_${name}.csv`);
      const { measured, predicted } = scoreStation(readStationYear(text, elevation), 100);
      assertLess(Math.abs(predicted.mean - measured.mean), 1.0);
      assertLess(Math.abs(predicted.amplitude / measured.amplitude - 1), 0.25);
    },
  });
}
