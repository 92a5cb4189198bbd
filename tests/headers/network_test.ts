import { assert, assertAlmostEquals, assertLess, assertThrows } from "@std/assert";
import fc from "fast-check";
import { InputError } from "../../lib/basics/mod.ts";
import { tubePressure } from "../../lib/headers/tube_pressure.ts";
import {
  findJunctions,
  type HeaderLine,
  type HeaderNetwork,
  type Port,
  solveNetwork,
} from "../../lib/headers/mod.ts";
import { layouts, networks } from "./any_network.ts";
import { closedFormNetwork } from "./closed_form_networks.ts";

const flowOf = (network: HeaderNetwork): number =>
  0.012 * network.tubes.filter((tube) => tube.open).length;

/** Fails unless what flows into each node of both headers flows out of it. */
function conserves(network: HeaderNetwork, airFlow: number): void {
  const solved = solveNetwork(network, airFlow);
  const count = network.tubes.length;
  const open = network.tubes.flatMap((tube, i) => tube.open ? [i] : []);
  open.forEach((tube, k) => {
    // between this tube and the next open one, or the right end, ports may add or take air
    const next = open[k + 1] ?? count;
    const between = (ports: readonly Port[], shares: readonly number[]): number =>
      ports.reduce(
        (sum, { after }, port) =>
          after > tube && after <= next ? sum + airFlow * shares[port]! : sum,
        0,
      );
    const supplied = between(network.supply.ports, solved.supplyShares);
    const taken = between(network.return!.ports, solved.returnShares);
    const supplyNext = next < count ? solved.supplyFlows[next]! : 0;
    const returnNext = next < count ? solved.returnFlows[next]! : 0;
    const flow = solved.flows[tube]!;
    assertAlmostEquals(solved.supplyFlows[tube]! - flow + supplied, supplyNext, 1e-11);
    assertAlmostEquals(solved.returnFlows[tube]! + flow - taken, returnNext, 1e-11);
  });
}

Deno.test("solveNetwork() conserves air at every node of any network", () => {
  // Property: conservation; blocked tubes carry nothing
  fc.assert(
    fc.property(networks, (network) => {
      const airFlow = flowOf(network);
      const { flows } = solveNetwork(network, airFlow);
      const sum = flows.reduce((total, flow) => total + flow, 0);
      assertAlmostEquals(sum, airFlow, 1e-12 * network.tubes.length);
      network.tubes.forEach((tube, i) => assert(tube.open || flows[i] === 0));
      conserves(network, airFlow);
    }),
    { numRuns: 60 },
  );
});

Deno.test("solveNetwork() gives each tube the flow that its pressure difference drives", () => {
  // Property: balance of pressures at every open tube
  fc.assert(
    fc.property(networks, (network) => {
      const airFlow = flowOf(network);
      const solved = solveNetwork(network, airFlow);
      network.tubes.forEach((tube, i) => {
        if (!tube.open) return;
        const loss = tubePressure(tube, solved.flows[i]!, network.air);
        const drive = solved.supplyPressure[i]! - solved.returnPressure[i]!;
        assertAlmostEquals(drive, loss, 1e-6 * (1 + solved.pressureDrop));
      });
    }),
    { numRuns: 60 },
  );
});

Deno.test("solveNetwork() needs pressure to move air through any network", () => {
  // Property: total pressure falls from the ports of the supply to those of the return
  fc.assert(
    fc.property(networks, (network) => {
      const airFlow = flowOf(network);
      assert(solveNetwork(network, airFlow).pressureDrop > 0);
    }),
    { numRuns: 40 },
  );
});

Deno.test("solveNetwork() reverses all signs when the flow reverses (friction alone)", () => {
  // Property: odd symmetry of friction; regain, which has none, switched off
  const none = { ...findJunctions("bernoulli"), dividingRegain: 0, combiningRegain: 0 };
  fc.assert(
    fc.property(networks, (network) => {
      const even = (line: HeaderLine): HeaderLine => ({
        ...line,
        diameters: line.diameters.map(() => 0.4),
        ports: line.ports.map((port) => ({ ...port, share: 1 / line.ports.length })),
      });
      const plain: HeaderNetwork = {
        ...network,
        tubes: network.tubes.map((tube) => ({ ...tube, open: true })),
        supply: { ...even(network.supply), ports: [{ after: 0, share: 1 }] },
        return: { ...even(network.return!), ports: [{ after: network.tubes.length, share: 1 }] },
        junctions: none,
      };
      const airFlow = 0.012 * plain.tubes.length;
      const forth = solveNetwork(plain, airFlow);
      const back = solveNetwork(plain, -airFlow);
      forth.flows.forEach((flow, i) => assertAlmostEquals(back.flows[i]!, -flow, 1e-7 * airFlow));
      assertAlmostEquals(back.pressureDrop, -forth.pressureDrop, 1e-6 * forth.pressureDrop);
    }),
    { numRuns: 40 },
  );
});

Deno.test("solveNetwork() mirrors a Z field of equal headers when the flow reverses", () => {
  // Property: running it backwards is the same field seen from the other end and side
  const network = closedFormNetwork({
    count: 30,
    areaRatio: 1.2,
    loss: 5,
    dividing: 0.9,
    combining: 1.7,
    arrangement: "Z",
  });
  const forth = solveNetwork(network, 1).flows;
  const back = solveNetwork(network, -1).flows;
  forth.forEach((flow, i) => assertAlmostEquals(back[29 - i]!, -flow, 1e-9));
});

Deno.test("solveNetwork() shares evenly whatever the fan speed: shares do not depend on the flow", () => {
  // Property: all losses of a corrugated field grow with the square of the flow
  fc.assert(
    fc.property(networks, (network) => {
      const rough: HeaderNetwork = {
        ...network,
        tubes: network.tubes.map((tube) => ({ ...tube, frictionFactor: 0.06 })),
        supply: { ...network.supply, frictionFactor: 0.05 },
        return: { ...network.return!, frictionFactor: 0.05 },
      };
      const slow = solveNetwork(rough, flowOf(rough));
      const fast = solveNetwork(rough, 2 * flowOf(rough));
      slow.flows.forEach((flow, i) =>
        assertAlmostEquals(fast.flows[i]! / 2, flow, 1e-7 * flowOf(rough))
      );
      assertAlmostEquals(fast.pressureDrop / 4, slow.pressureDrop, 1e-6 * slow.pressureDrop);
    }),
    { numRuns: 40 },
  );
});

Deno.test("solveNetwork() treats a symmetric field symmetrically from the centre and from both ends", () => {
  // Property: symmetry
  for (const layout of [2, 3]) {
    const base = closedFormNetwork({
      count: 20,
      areaRatio: 1,
      loss: 6,
      dividing: 1,
      combining: 1.8,
      arrangement: "Z",
    });
    const [supply, back] = layouts(20)[layout]!;
    const { flows, supplyShares } = solveNetwork({
      ...base,
      supply: { ...base.supply, ports: supply },
      return: { ...base.return!, ports: back },
    }, 1);
    flows.forEach((flow, i) => assertAlmostEquals(flow, flows[19 - i]!, 1e-7));
    assertAlmostEquals(supplyShares[0]!, 1 / supplyShares.length, 1e-7);
  }
});

Deno.test("solveNetwork() settles a network of 400 tubes in a few Newton steps", () => {
  // Property: quadratic convergence with a tridiagonal system; work grows with the count only
  const network = closedFormNetwork({
    count: 400,
    areaRatio: 1.5,
    loss: 4,
    dividing: 1,
    combining: 1.8,
    arrangement: "Z",
  });
  const solved = solveNetwork(network, 1);
  assert(solved.iterations <= 12, `${solved.iterations} steps`);
  assertLess(solved.residual, 1e-7);
});

Deno.test("solveNetwork() leaves air standing at no flow and gives one tube all of it", () => {
  // Property: limits
  const network = closedFormNetwork({
    count: 5,
    areaRatio: 1,
    loss: 4,
    dividing: 1,
    combining: 1,
    arrangement: "U",
  });
  assert(solveNetwork(network, 0).flows.every((flow) => flow === 0));
  const single = closedFormNetwork({
    count: 1,
    areaRatio: 0.1,
    loss: 4,
    dividing: 1,
    combining: 1,
    arrangement: "U",
  });
  assertAlmostEquals(solveNetwork(single, 0.3).flows[0]!, 0.3, 1e-12);
});

Deno.test("solveNetwork() gives rows on either side of a header equal shares, and halves them", () => {
  // Property: two tubes at one place see one pressure; together they are one tube of double area
  const base = closedFormNetwork({
    count: 12,
    areaRatio: 1.5,
    loss: 5,
    dividing: 0.9,
    combining: 1.8,
    arrangement: "Z",
  });
  const single = solveNetwork(base, 1);
  const twice = <Item>(items: readonly Item[]): Item[] => items.flatMap((item) => [item, item]);
  const line = (given: HeaderLine): HeaderLine => ({
    ...given,
    diameters: twice(given.diameters),
    ports: given.ports.map((port) => ({ ...port, after: 2 * port.after })),
  });
  const tubes = twice(base.tubes).map((tube) => ({
    ...tube,
    diameter: tube.diameter / Math.SQRT2,
  }));
  const pairs = { ...base, tubes, supply: line(base.supply), return: line(base.return!) };
  const double = solveNetwork(pairs, 1);
  single.flows.forEach((flow, i) => {
    assertAlmostEquals(double.flows[2 * i]!, flow / 2, 1e-9);
    assertAlmostEquals(double.flows[2 * i + 1]!, flow / 2, 1e-9);
  });
  assertAlmostEquals(double.pressureDrop, single.pressureDrop, 1e-9);
});

Deno.test("solveNetwork() lets unlike tubes at one place share by their losses", () => {
  // Property: equal pressure: flows as 1/√K
  const base = closedFormNetwork({
    count: 2,
    areaRatio: 0.2,
    loss: 4,
    dividing: 1,
    combining: 1,
    arrangement: "U",
  });
  const tubes = base.tubes.map((tube, i) => ({ ...tube, position: 0, minorLoss: i === 0 ? 4 : 9 }));
  const { flows } = solveNetwork({ ...base, tubes }, 1);
  assertAlmostEquals(flows[0]! / flows[1]!, 1.5, 1e-12);
});

Deno.test("solveNetwork() refuses networks that make no sense", () => {
  // Property: bad input is told, not solved
  const network = closedFormNetwork({
    count: 3,
    areaRatio: 1,
    loss: 4,
    dividing: 1,
    combining: 1,
    arrangement: "U",
  });
  const shut = network.tubes.map((tube) => ({ ...tube, open: false }));
  assertThrows(() => solveNetwork({ ...network, tubes: shut }, 1), InputError, "no open tube");
  const falling = [...network.tubes].reverse();
  assertThrows(
    () => solveNetwork({ ...network, tubes: falling }, 1),
    InputError,
    "ascending order",
  );
  const ports = [{ after: 0, share: 0.7 }];
  assertThrows(
    () => solveNetwork({ ...network, supply: { ...network.supply, ports } }, 1),
    InputError,
    "sum to 1",
  );
});
