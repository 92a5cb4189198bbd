import { assert, assertAlmostEquals, assertEquals, assertStringIncludes } from "@std/assert";
import { parseHTML } from "linkedom";
import {
  drawSheets,
  fieldGeometry,
  footingClearance,
  headerHoles,
  type Paper,
  paperSize,
  quantitiesCsv,
  quantityTakeOff,
  scaleBarLength,
} from "winterground/drawings/mod.ts";
import { exampleInputs } from "./example.ts";

const PAPERS: readonly Paper[] = ["A4", "A3", "Letter", "Tabloid"];
const CASES = [
  exampleInputs(),
  exampleInputs({ groups: 1 }),
  exampleInputs({ layers: 1, perLayer: 14 }),
  exampleInputs({ layers: 3, perLayer: 4, footingDepth: 0 }),
];

interface Box {
  readonly words: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function openSvg(svg: string): Document {
  return parseHTML(`<html><body>${svg}</body></html>`).document as unknown as Document;
}

function numberOf(node: Element, name: string): number {
  return Number(node.getAttribute(name));
}

function textBoxes(svg: string): Box[] {
  return [...openSvg(svg).querySelectorAll("text")].map((node) => {
    const size = numberOf(node, "font-size");
    const width = 0.5 * size * node.textContent!.length;
    const anchor = node.getAttribute("text-anchor");
    const x = numberOf(node, "x") -
      (anchor === "middle" ? width / 2 : anchor === "end" ? width : 0);
    const y = numberOf(node, "y");
    const words = node.textContent!;
    return { words, left: x, right: x + width, top: y - 0.75 * size, bottom: y + 0.2 * size };
  });
}

Deno.test("every sheet keeps its words inside the frame on every paper", () => {
  // Property: no clipped text, with letters half as wide as high.
  for (const inputs of CASES) {
    for (const paper of PAPERS) {
      const { width, height } = paperSize(paper);
      for (const [name, svg] of Object.entries(drawSheets(inputs, paper))) {
        for (const box of textBoxes(svg)) {
          const inside = box.left >= 8 && box.right <= width - 8 && box.top >= 8 &&
            box.bottom <= height - 8;
          assert(inside, `${name}: "${box.words}" leaves the frame`);
        }
      }
    }
  }
});

Deno.test("no two words overlap on any sheet", () => {
  // Property: text boxes are disjoint.
  for (const inputs of CASES) {
    for (const paper of PAPERS) {
      for (const [name, svg] of Object.entries(drawSheets(inputs, paper))) {
        const boxes = textBoxes(svg);
        for (const [index, one] of boxes.entries()) {
          for (const other of boxes.slice(index + 1)) {
            const apart = one.right <= other.left || other.right <= one.left ||
              one.bottom <= other.top || other.bottom <= one.top;
            assert(apart, `${name}: "${one.words}" overlaps "${other.words}"`);
          }
        }
      }
    }
  }
});

Deno.test("tubes and scale bar have their true length on paper", () => {
  // Property: paper length × scale = length in the world.
  for (const paper of PAPERS) {
    const svg = drawSheets(exampleInputs(), paper)[`plan-${paper}.svg`]!;
    const scale = Number(svg.match(/Scale 1:(\d+)/)![1]);
    const document = openSvg(svg);
    const tubes = [...document.querySelectorAll('line[stroke="#1f6f8b"]')];
    assertEquals(tubes.length, 12);
    for (const tube of tubes) {
      const length = numberOf(tube, "x2") - numberOf(tube, "x1");
      assertAlmostEquals(length * scale / 1000, 20, 0.001 * scale);
    }
    const bar = [...document.querySelectorAll('rect[height="2"]')]
      .reduce((sum, part) => sum + numberOf(part, "width"), 0);
    assertAlmostEquals(bar * scale / 1000, scaleBarLength(scale, 56), 0.002 * scale / 1000 * 2);
    const root = document.querySelector("svg")!;
    assertEquals(root.getAttribute("width"), `${paperSize(paper).width}mm`);
  }
});

Deno.test("every sheet prints the trench and services notes", () => {
  // Property: safety notes stand on each drawing.
  for (const [name, svg] of Object.entries(drawSheets(exampleInputs(), "A4"))) {
    const words = textBoxes(svg).map((box) => box.words).join(" ");
    assertStringIncludes(words, "No person below grade without protection", name);
    assertStringIncludes(words, "Private services not shown", name);
    assertStringIncludes(words, "Verify the water table", name);
  }
});

Deno.test("headerHoles() leaves the ligament efficiency (p − d)/p", () => {
  // Property: hand arithmetic of the example: one row, pitch 0.45 m, hole 0.118 + 0.003 m.
  const layout = headerHoles(exampleInputs({ layers: 1, perLayer: 14, groups: 1 }));
  assertEquals(layout.holes.length, 14);
  assertAlmostEquals(layout.run, 13 * 0.45, 1e-9);
  assertAlmostEquals(layout.strengthLeft, (0.45 - 0.121) / 0.45, 1e-9);
  assertEquals(layout.tooClose, false);
});

Deno.test("headerHoles() says so when two rows come too close around the pipe", () => {
  // Property: two rows at ±40° on a pipe of 0.16 m are 0.112 m apart, less than a hole.
  const inputs = exampleInputs({ groups: 1 });
  const narrow = { ...inputs, headersInputs: { ...inputs.headersInputs, diameter: 0.16 } };
  const layout = headerHoles(narrow);
  assertAlmostEquals(layout.ligament, 80 * Math.PI / 180 * 0.08 - 0.121, 1e-9);
  assert(layout.tooClose);
});

Deno.test("footingClearance() falls by a metre for each metre below the footing", () => {
  // Property: 45° line.
  const deep = exampleInputs({ footingDepth: 0.5 });
  const shallow = exampleInputs({ footingDepth: 0.9 });
  const gain = footingClearance(shallow, fieldGeometry(shallow)) -
    footingClearance(deep, fieldGeometry(deep));
  assertAlmostEquals(gain, 0.4, 1e-9);
});

Deno.test("quantityTakeOff() agrees with hand arithmetic", () => {
  // Property: 24 tubes of 20 m, 5 % waste; pit from the outer tubes, margin and bedding.
  const rows = new Map(quantityTakeOff(exampleInputs()).map((row) => [row.item, row]));
  const tube = rows.get("tube, corrugated drain tube 100")!;
  assertAlmostEquals(tube.amount, 480, 1e-9);
  assertAlmostEquals(tube.order, 504, 1e-9);
  const width = 2 * (11 * 0.45 / 2 + 0.059 + 0.3);
  const length = 20 + 2 * (0.381 / 2 + 0.6);
  const depth = 1 + 0.381 / 2 + 0.1;
  assertAlmostEquals(rows.get("excavation")!.amount, width * length * depth, 1e-9);
  assertEquals(rows.get("holes in headers")!.amount, 48);
  const csv = quantitiesCsv([...rows.values()]);
  assertEquals(csv.split("\n")[0], "item,net amount,to order,unit,basis");
  assertEquals(csv.trim().split("\n").length, rows.size + 1);
});
