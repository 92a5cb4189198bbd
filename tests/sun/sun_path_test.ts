import { assert, assertAlmostEquals } from "@std/assert";
import fc from "fast-check";
import { direction, incidencePath, positiveMean } from "winterground/sun/mod.ts";

const DEGREE = Math.PI / 180;
const angle = (low: number, high: number) =>
  fc.double({ min: low, max: high, noNaN: true, noDefaultInfinity: true });

Deno.test("positiveMean() equals the sum over many small steps", () => {
  // Property: an exact integral agrees with the midpoint rule
  fc.assert(
    fc.property(
      angle(-1, 1),
      angle(-1, 1),
      angle(-1, 1),
      angle(-4, 3),
      angle(0.01, 0.5),
      (a, b, c, from, span) => {
        const mean = positiveMean({ constant: a, cosine: b, sine: c }, from, from + span);
        let [sum, positive] = [0, 0];
        for (let step = 0; step < 2000; step++) {
          const at = from + (step + 0.5) / 2000 * span;
          const value = a + b * Math.cos(at) + c * Math.sin(at);
          sum += Math.max(0, value) / 2000;
          positive += (value > 0 ? 1 : 0) / 2000;
        }
        assertAlmostEquals(mean.mean, sum, 1e-6);
        assertAlmostEquals(mean.share, positive, 2e-3);
      },
    ),
    { numRuns: 200, seed: 5 },
  );
});

Deno.test("incidencePath() agrees with the angle between the sun's direction and the plane's normal", () => {
  // Property: the long formula is the scalar product of two unit vectors
  fc.assert(
    fc.property(
      angle(-90, 90),
      angle(-23.4, 23.4),
      angle(-180, 180),
      angle(0, 180),
      angle(0, 360),
      (latitude, declination, hour, tilt, azimuth) => {
        const path = incidencePath({ tilt, azimuth }, latitude, declination);
        const cosine = path.constant + path.cosine * Math.cos(hour * DEGREE) +
          path.sine * Math.sin(hour * DEGREE);
        const [elevation, sunAzimuth] = direction(latitude, declination, hour * DEGREE);
        const product = Math.sin(elevation * DEGREE) * Math.cos(tilt * DEGREE) +
          Math.cos(elevation * DEGREE) * Math.sin(tilt * DEGREE) *
            Math.cos((sunAzimuth - azimuth) * DEGREE);
        assertAlmostEquals(cosine, product, 1e-9);
        assert(sunAzimuth >= 0 && sunAzimuth < 360);
      },
    ),
    { numRuns: 300, seed: 5 },
  );
});
