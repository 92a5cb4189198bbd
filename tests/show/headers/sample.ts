/** Made-up headers. */
import { summariseHeaders } from "../../../lib/headers/mod.ts";
import type { HeadersResult } from "../../../lib/headers/types.ts";
import { made } from "../made.ts";
import { tubesResult } from "../tubes/sample.ts";

export const headersResult = summariseHeaders(
  made<HeadersResult>({
    diameter: 0.38,
    areaRatio: 0.72,
    shares: Float64Array.from({ length: 20 }, (_, tube) => 0.88 + (tube % 10) * 0.0266),
    flowMin: 0.88,
    flowMax: 1.12,
    unevenness: 0.08,
    pressureDrop: 42,
    supplyPressure: Float64Array.from({ length: 20 }, (_, tube) => 38 + (tube % 10) * 0.4),
    returnPressure: Float64Array.from({ length: 20 }, (_, tube) => 6 - (tube % 10) * 0.4),
    notices: [],
  }),
  tubesResult,
);
