// Source: US Climate Reference Network daily records 2020, NOAA NCEI (Diamond et al. 2013
// [diamond-2013])
import { assertLess } from "@std/assert";
import { readStation, scoreStation, STATIONS } from "../harness/uscrn.ts";

const OPEN_DATA = Deno.env.get("OPEN_DATA");
const SKIPPED = OPEN_DATA === undefined ? " (skipped: OPEN_DATA is not set)" : "";

for (const [file, name, elevation] of STATIONS) {
  Deno.test({
    name: `USCRN 2020 ${name}: mean within 1.0 K and amplitude within 25 % at 100 cm${SKIPPED}`,
    ignore: OPEN_DATA === undefined,
    fn() {
      const station = readStation(OPEN_DATA!, file, elevation);
      const { measured, predicted } = scoreStation(station, 100);
      assertLess(Math.abs(predicted.mean - measured.mean), 1.0);
      assertLess(Math.abs(predicted.amplitude / measured.amplitude - 1), 0.25);
    },
  });
}
