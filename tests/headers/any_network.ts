/** Networks of headers as a property test wants them: any size, layout, taper and state. @module */
import fc from "fast-check";
import {
  findJunctions,
  type HeaderLine,
  type HeaderNetwork,
  type Port,
} from "../../lib/headers/mod.ts";
import { AIR } from "./closed_form_networks.ts";

/** Where the air enters and leaves headers of `count` tubes, one entry a layout. */
export const layouts = (
  count: number,
): readonly (readonly [readonly Port[], readonly Port[]])[] => [
  [[{ after: 0, share: 1 }], [{ after: count, share: 1 }]],
  [[{ after: 0, share: 1 }], [{ after: 0, share: 1 }]],
  [[{ after: count >> 1, share: 1 }], [{ after: count >> 1, share: 1 }]],
  [
    [{ after: 0, share: null }, { after: count, share: null }],
    [{ after: 0, share: null }, { after: count, share: null }],
  ],
  [[{ after: 0, share: 0.3 }, { after: count, share: 0.7 }], [{ after: count >> 1, share: 1 }]],
];

/** Random networks, even tapered ones with blocked tubes and stubs. */
export const networks: fc.Arbitrary<HeaderNetwork> = fc.record({
  count: fc.integer({ min: 2, max: 40 }),
  layout: fc.integer({ min: 0, max: 4 }),
  header: fc.double({ min: 0.25, max: 0.8, noNaN: true }),
  taper: fc.double({ min: 0.6, max: 1, noNaN: true }),
  length: fc.double({ min: 3, max: 40, noNaN: true }),
  manning: fc.constantFrom(null, 0.015),
  stub: fc.double({ min: 0, max: 1, noNaN: true }),
  junctions: fc.constantFrom("tees", "bernoulli", "partial"),
  seeds: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 40, maxLength: 40 }),
}).map(({ count, layout, header, taper, length, manning, stub, junctions, seeds }) => {
  const [supplyPorts, returnPorts] = layouts(count)[layout]!;
  const line = (ports: readonly Port[]): HeaderLine => ({
    diameters: Array.from({ length: count }, (_, i) => header * (1 - (1 - taper) * i / count)),
    roughness: 1e-4,
    manning,
    frictionFactor: null,
    obstructions: Array.from({ length: count }, (_, i) => stub * seeds[39 - i]! * 0.2),
    ports,
    lead: 0.4,
  });
  return {
    tubes: Array.from({ length: count }, (_, i) => ({
      position: 0.4 * i,
      diameter: 0.102,
      roughness: 1e-6,
      manning,
      length: length * (0.9 + 0.2 * seeds[i]!),
      minorLoss: 1.5 + seeds[i]!,
      frictionFactor: null,
      open: i === 0 || seeds[i]! < 0.93,
    })),
    supply: line(supplyPorts),
    return: line(returnPorts),
    junctions: findJunctions(junctions),
    air: AIR,
  };
});
