import { assert, assertAlmostEquals } from "@std/assert";
import { fitLeastSquares } from "../../lib/measured/mod.ts";

type Curve = (x: number, b: readonly number[]) => number;

const saturation: Curve = (x, [b1, b2]) => b1! * (1 - Math.exp(-b2! * x));
const cubics: Curve = (x, b) =>
  (b[0]! + b[1]! * x + b[2]! * x ** 2 + b[3]! * x ** 3) /
  (1 + b[4]! * x + b[5]! * x ** 2 + b[6]! * x ** 3);

/** Models as the head of each file writes them, and the starts to fit from. */
const SETS: Readonly<Record<string, { readonly curve: Curve; readonly starts: number[] }>> = {
  Misra1a: { curve: saturation, starts: [1, 2] },
  BoxBOD: { curve: saturation, starts: [1, 2] },
  Rat43: {
    curve: (x, [b1, b2, b3, b4]) => b1! / (1 + Math.exp(b2! - b3! * x)) ** (1 / b4!),
    starts: [1, 2],
  },
  Thurber: { curve: cubics, starts: [1, 2] },
  Hahn1: { curve: cubics, starts: [2] },
  MGH09: {
    curve: (x, [b1, b2, b3, b4]) => b1! * (x ** 2 + x * b2!) / (x ** 2 + x * b3! + b4!),
    starts: [2],
  },
  Bennett5: { curve: (x, [b1, b2, b3]) => b1! * (b2! + x) ** (-1 / b3!), starts: [2] },
  ENSO: {
    curve: (x, b) => {
      const turn = 2 * Math.PI * x;
      return b[0]! + b[1]! * Math.cos(turn / 12) + b[2]! * Math.sin(turn / 12) +
        b[4]! * Math.cos(turn / b[3]!) + b[5]! * Math.sin(turn / b[3]!) +
        b[7]! * Math.cos(turn / b[6]!) + b[8]! * Math.sin(turn / b[6]!);
    },
    starts: [2],
  },
};

const folder = Deno.env.get("OPEN_DATA");
const skipped = folder === undefined ? " [skipped: OPEN_DATA is not set]" : "";

/** Starts, certified values and data of one file. */
function readSet(name: string) {
  const text = Deno.readTextFileSync(`${folder}/nist-strd/${name}.dat`);
  const rows = [...text.matchAll(/^\s*b\d+ =\s+(.*)$/gm)]
    .map((found) => found[1]!.trim().split(/\s+/).map(Number));
  const line = (label: string) => Number(new RegExp(`${label}:\\s+(\\S+)`).exec(text)![1]);
  const from = Number(/Data\s+\(lines (\d+)/.exec(text)![1]) - 1;
  const data = text.split("\n").slice(from).filter((one) => one.trim() !== "")
    .map((one) => one.trim().split(/\s+/).map(Number));
  return {
    starts: [rows.map((row) => row[0]!), rows.map((row) => row[1]!)],
    parameters: rows.map((row) => row[2]!),
    deviations: rows.map((row) => row[3]!),
    sum: line("Residual Sum of Squares"),
    residualDeviation: line("Residual Standard Deviation"),
    count: line("Number of Observations"),
    data,
  };
}

/** Decimal digits that agree. */
const digits = (found: number, certified: number) =>
  -Math.log10(Math.max(1e-16, Math.abs(found - certified) / Math.abs(certified)));

for (const [name, { curve, starts }] of Object.entries(SETS)) {
  for (const start of starts) {
    Deno.test({
      name: `fitLeastSquares(): ${name} from start ${start} to six digits${skipped}`,
      ignore: folder === undefined,
      fn: () => {
        // Source: NIST Statistical Reference Datasets, nonlinear regression, certified values in
        // the head of each file (public domain)
        const set = readSet(name);
        assert(set.data.length === set.count, `${set.data.length} rows read of ${set.count}`);
        const fit = fitLeastSquares(
          (b) => set.data.map(([y, x]) => curve(x!, b) - y!),
          set.starts[start - 1]!,
        );
        assert(fit.settled, "still moving");
        const worst = Math.min(
          ...fit.parameters.map((one, j) => digits(one, set.parameters[j]!)),
          ...fit.standardDeviations.map((one, j) => digits(one, set.deviations[j]!)),
          digits(fit.sumOfSquares, set.sum),
          digits(fit.residualDeviation, set.residualDeviation),
        );
        assert(worst >= 6, `only ${worst.toFixed(1)} digits`);
      },
    });
  }
}

Deno.test({
  name: `fitLeastSquares(): 95 % intervals of Misra1a${skipped}`,
  ignore: folder === undefined,
  fn: () => {
    // Source: tables of Student's distribution, 97.5 % at 12 degrees of freedom: 2.179
    const set = readSet("Misra1a");
    const fit = fitLeastSquares(
      (b) => set.data.map(([y, x]) => saturation(x!, b) - y!),
      set.starts[1]!,
    );
    fit.halfWidths.forEach((half, j) =>
      assertAlmostEquals(half / set.deviations[j]!, 2.179, 0.0005)
    );
  },
});
