import { assert } from "@std/assert";
import { evenness, groupNetwork, type HeaderLayout, solveNetwork } from "../../lib/headers/mod.ts";
import { exchangedFlow, findTube } from "../../lib/tubes/mod.ts";
import { AIR } from "../headers/closed_form_networks.ts";
import { HEADERS } from "../headers/fields.ts";

/** Seven smooth pipes of one diameter on headers of the same or of a larger one. */
function exchanger(layout: HeaderLayout, headerRatio: number, lengthRatio: number) {
  const product = findTube("smooth-200mm");
  const diameter = headerRatio * product.insideDiameter;
  const group = {
    // headers as wide as the tubes have no wall to drill: tees, hence no check of room here
    inputs: {
      ...HEADERS,
      layout,
      diameter,
      returnDiameter: diameter,
      manning: null,
      roughness: 1e-5,
    },
    product,
    length: lengthRatio * product.insideDiameter,
    extraLosses: 0,
    exitLoss: 1,
    places: [0, 1, 2, 3, 4, 5, 6].map((i) => 0.5 * i),
    air: AIR,
  };
  const { flows } = solveNetwork(groupNetwork(group), 7 * 0.05);
  const even = new Float64Array(7).fill(0.05);
  return { ...evenness(flows), heat: exchangedFlow(flows, group) / exchangedFlow(even, group) };
}

Deno.test("unevenness ranks as measured in multi-pipe exchangers: short tubes on equal headers worst, U better than Z (Geothermics 88, 2020)", () => {
  // Source: Amanowicz & Wojtkowiak 2020 [amanowicz-2020], abstract: headers as wide as the tubes
  // with L = 76 d lose most, headers of 1.4 d with L = 300 d least; U-type better than Z-type. The
  // order is checked; their seasonal percentages need inputs that the abstract does not give
  const worst = exchanger("Z", 1, 76);
  const longer = exchanger("Z", 1, 300);
  const wider = exchanger("Z", 1.4, 76);
  const best = exchanger("Z", 1.4, 300);
  assert(worst.unevenness > longer.unevenness && longer.unevenness > best.unevenness);
  assert(worst.unevenness > wider.unevenness && wider.unevenness > best.unevenness);
  assert(worst.heat < best.heat && best.heat <= 1);
  for (const [header, length] of [[1, 76], [1, 300], [1.4, 76], [1.4, 300]] as const) {
    const reverse = exchanger("U", header, length);
    const parallel = exchanger("Z", header, length);
    assert(reverse.unevenness < parallel.unevenness, `${header} d, ${length} d`);
  }
});

Deno.test("fan speed hardly changes the unevenness (MacKinnon 1990)", () => {
  // Source: MacKinnon 1990 [mackinnon-1990], MSc McGill, abstract: fan speed had little effect on
  // uniformity of a perforated duct; here a threefold flow changes the coefficient of variation by
  // less than a tenth
  const product = findTube("corrugated-4in");
  const group = {
    inputs: { ...HEADERS, layout: "Z" as const },
    product,
    length: 12,
    extraLosses: 0,
    exitLoss: 1,
    places: Array.from({ length: 12 }, (_, i) => 0.4 * i),
    air: AIR,
  };
  const spread = (flow: number): number =>
    evenness(solveNetwork(groupNetwork(group), 12 * flow).flows).unevenness;
  const slow = spread(0.01);
  assert(Math.abs(spread(0.03) / slow - 1) < 0.1);
});
