// Sheets in every size and unit; long because all are drawn once for all tests.
import { assert, assertAlmostEquals, assertEquals, assertStringIncludes } from "@std/assert";
import {
  drawForReport,
  drawnSize,
  drawSheets,
  type Paper,
  paperSize,
  scaleBarLength,
} from "winterground/drawings/mod.ts";
import { type Box, numberOf, openSvg, textBoxes } from "./boxes.ts";
import { pipeRows } from "winterground/worth/quantities/pipes.ts";
import { exampleInputs, ODD_FIELDS } from "./example.ts";

const TUBE_BY_THE_METRE = {
  fan: { id: "", name: "" },
  coilLength: null,
  gravelMargin: null,
  flatBoard: null,
  collector: null,
};
const PAPERS: readonly Paper[] = ["A4", "A3", "Letter", "Tabloid"];
const CASES = [
  exampleInputs(),
  exampleInputs({ groups: 1 }),
  exampleInputs({ layers: 1, perLayer: 14 }),
  exampleInputs({ layers: 3, perLayer: 4, footingDepth: 0 }),
  ...Object.values(ODD_FIELDS),
];

/** A sheet with its words, drawn and read once for all tests. */
interface Sheet {
  readonly name: string;
  readonly paper: Paper;
  readonly svg: string;
  readonly boxes: readonly Box[];
}

/** Every sheet of every case on every paper. */
const SHEETS: readonly Sheet[] = CASES.flatMap((inputs) =>
  PAPERS.flatMap((paper) =>
    Object.entries(drawSheets(inputs, paper)).map(([name, svg]) => ({
      name,
      paper,
      svg,
      boxes: textBoxes(svg),
    }))
  )
);
const ON_A4 = SHEETS.filter(({ paper }) => paper === "A4");

Deno.test("what plan and section say of the footing fits the report in the widest usual letters", () => {
  // Property: letters 0.57, bold ones 0.65 as wide as high (measured on DejaVu Sans in a browser)
  for (const footingDepth of [null, 0.3, 0.8]) {
    for (const name of ["plan", "section"] as const) {
      const svg = openSvg(drawForReport(exampleInputs({ footingDepth }), name));
      const [left, , width] = svg.querySelector("svg")!.getAttribute("viewBox")!.split(" ");
      const lines = [...svg.querySelectorAll("text")].filter((node) => numberOf(node, "x") === 12);
      assert(lines.length >= 2, name);
      for (const line of lines) {
        const letter = line.getAttribute("font-weight") === "bold" ? 0.65 : 0.57;
        const right = 12 + letter * numberOf(line, "font-size") * line.textContent!.length;
        assert(right <= Number(left) + Number(width), `${name}: "${line.textContent}" is cut off`);
      }
    }
  }
});

Deno.test("every sheet keeps its words inside the frame on every paper", () => {
  // Property: no clipped text, with letters half as wide as high.
  for (const { name, paper, boxes } of SHEETS) {
    const { width, height } = drawnSize(paper);
    for (const box of boxes) {
      const inside = box.left >= 8 && box.right <= width - 8 && box.top >= 8 &&
        box.bottom <= height - 8;
      assert(inside, `${name}: "${box.words}" leaves the frame`);
    }
  }
});

Deno.test("no two words overlap on any sheet", () => {
  // Property: text boxes are disjoint.
  for (const { name, boxes } of SHEETS) {
    for (const [index, one] of boxes.entries()) {
      for (const other of boxes.slice(index + 1)) {
        const apart = one.right <= other.left || other.right <= one.left ||
          one.bottom <= other.top || other.bottom <= one.top;
        assert(apart, `${name}: "${one.words}" overlaps "${other.words}"`);
      }
    }
  }
});

/** Line thickness from which words are hard to read across, mm. */
const THICK = 0.3;

/** Thick lines, house outlines and pipes as boxes, with their place in the order of drawing. */
function thickBoxes(svg: string): { readonly box: Box; readonly order: number }[] {
  const nodes = [...openSvg(svg).querySelectorAll("*")];
  const found: { box: Box; order: number }[] = [];
  const add = (order: number, points: readonly (readonly [number, number])[], width: number) => {
    for (const [index, [x, y]] of points.slice(1).entries()) {
      const [before, above] = points[index]!;
      const slanted = before !== x && Math.abs(above - y) > 3;
      if (slanted) continue;
      found.push({
        order,
        box: {
          words: "line",
          left: Math.min(before, x) - width / 2,
          right: Math.max(before, x) + width / 2,
          top: Math.min(above, y) - width / 2,
          bottom: Math.max(above, y) + width / 2,
        },
      });
    }
  };
  for (const [order, node] of nodes.entries()) {
    const width = numberOf(node, "stroke-width");
    if (!(width >= THICK) || node.tagName.toLowerCase() === "svg") continue;
    const at = (name: string) => numberOf(node, name);
    if (node.tagName.toLowerCase() === "line") {
      const [x1, y1, x2, y2] = [at("x1"), at("y1"), at("x2"), at("y2")];
      const tick = Math.abs(x1 - x2) < 2 && Math.abs(y1 - y2) < 2;
      if (!tick) add(order, [[x1, y1], [x2, y2]], width);
    } else if (node.tagName.toLowerCase() === "rect") {
      const [x, y, w, h] = [at("x"), at("y"), at("width"), at("height")];
      add(order, [[x, y], [x + w, y], [x + w, y + h], [x, y + h], [x, y]], width);
    } else if (node.tagName.toLowerCase() === "polyline") {
      const points = node.getAttribute("points")!.split(" ").map((pair) =>
        pair.split(",").map(Number) as [number, number]
      );
      add(order, points, width);
    }
  }
  return found;
}

Deno.test("no thick line runs through words", () => {
  // Property: words are clear of walls, pipes and the floor, or stand on a white ground above them.
  for (const { name, svg, boxes } of ON_A4) {
    const nodes = [...openSvg(svg).querySelectorAll("*")];
    const lines = thickBoxes(svg);
    assert(lines.length > 0, name);
    const places = nodes.flatMap((node, order) =>
      node.tagName.toLowerCase() === "text" ? [{ node, order }] : []
    );
    for (const [index, { node, order }] of places.entries()) {
      const grounded = node.parentElement!.tagName.toLowerCase() === "g";
      const words = boxes[index]!;
      for (const { box, order: drawn } of lines) {
        if (grounded && drawn < order) continue;
        const apart = words.right <= box.left || box.right <= words.left ||
          words.bottom <= box.top || box.bottom <= words.top;
        assert(apart, `${name}: a line crosses "${words.words}"`);
      }
    }
  }
});

/** Words that stand on pipes of the plan on purpose. */
const ON_PIPES = /^(spacing .*|in|out)$/;

Deno.test("a white ground under words hides no wall", () => {
  // Property: grounds of words that stand over thick lines would cut them: only thin ones may pass.
  for (const { name, svg, boxes } of ON_A4) {
    const lines = thickBoxes(svg);
    const nodes = [...openSvg(svg).querySelectorAll("text")];
    for (const [index, node] of nodes.entries()) {
      const grounded = node.parentElement!.tagName.toLowerCase() === "g";
      if (!grounded || ON_PIPES.test(node.textContent!)) continue;
      const words = boxes[index]!;
      for (const { box } of lines) {
        const apart = words.right <= box.left || box.right <= words.left ||
          words.bottom <= box.top || box.bottom <= words.top;
        assert(apart, `${name}: "${words.words}" stands on a thick line`);
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
    const root = document.querySelector("svg")!;
    // mm of paper in a unit of the drawing
    const larger = paperSize(paper).width / Number(root.getAttribute("viewBox")!.split(" ")[2]);
    const tubes = [...document.querySelectorAll('line[stroke="#1f6f8b"]')];
    assertEquals(tubes.length, 12);
    for (const tube of tubes) {
      const length = larger * (numberOf(tube, "x2") - numberOf(tube, "x1"));
      assertAlmostEquals(length * scale / 1000, 20, 0.001 * scale);
    }
    const bar = larger * [...document.querySelectorAll('rect[height="2"]')]
      .reduce((sum, part) => sum + numberOf(part, "width"), 0);
    assertAlmostEquals(
      bar * scale / 1000,
      scaleBarLength(scale * larger, 56),
      0.002 * scale / 1000 * 3,
    );
    assertEquals(root.getAttribute("width"), `${paperSize(paper).width}mm`);
    assertEquals(root.getAttribute("height"), `${paperSize(paper).height}mm`);
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

Deno.test("the long section says that headers of 0.7 m do not go under the floor", () => {
  // Property: hand arithmetic: the upper header's top at 0.6 − 0.1575 − 0.35 − 0.1 m, above the floor
  const sheet = textBoxes(drawSheets(exampleInputs({ header: 0.7 }), "A4")["long-section-A4.svg"]!);
  assert(
    sheet.some(({ words }) => words.includes("rises 7\u00a0mm (0.3\u00a0in) above the floor")),
  );
});

Deno.test("the legend of the plan names the 45° line only where it is drawn", () => {
  // Property: words and line go together, whatever the field
  for (const [name, inputs] of Object.entries(ODD_FIELDS)) {
    const svg = drawSheets(inputs, "A4")["plan-A4.svg"]!;
    const named = textBoxes(svg).some(({ words }) => words.includes("dashed line"));
    assertEquals(named, svg.includes("stroke-dasharray"), name);
  }
});

Deno.test("the height of the intake is dimensioned at the intake", () => {
  // Property: an extension line of the dimension starts at the end of the intake duct
  for (const [name, inputs] of Object.entries(ODD_FIELDS)) {
    const document = openSvg(drawSheets(inputs, "A4")["fan-and-riser-A4.svg"]!);
    const duct = [...document.querySelectorAll("polyline")].find((node) =>
      numberOf(node, "stroke-width") > 0.6 && node.getAttribute("stroke") === "#8a4b08"
    )!;
    const [x, y] = duct.getAttribute("points")!.split(" ").at(-1)!.split(",").map(Number);
    const starts = [...document.querySelectorAll("line")].filter((node) =>
      Math.abs(numberOf(node, "x1") - x!) < 0.01 && Math.abs(numberOf(node, "y1") - y!) < 0.01
    );
    assertEquals(starts.length, 1, name);
    const dimension = numberOf(starts[0]!, "x2");
    const words = [...document.querySelectorAll("text")].filter((node) =>
      /^intake \d/.test(node.textContent!) && Math.abs(numberOf(node, "x") - dimension) < 5
    );
    assertEquals(words.length, 1, name);
  }
});

Deno.test("bends are drawn and counted where tubes do not lie level with their header", () => {
  // Property: hand arithmetic: 14 tubes, a bend at each end, every layer off the header's centre
  const bent = ODD_FIELDS["two layers bent into one header"]!;
  const row = pipeRows({ ...TUBE_BY_THE_METRE, ...bent }).find(({ item }) =>
    item.startsWith("tube bends")
  )!;
  assertEquals([row.item, row.amount, row.unit], ["tube bends, 45°", 28, "pieces"]);
  const level = exampleInputs();
  assertEquals(
    pipeRows({ ...TUBE_BY_THE_METRE, ...level }).filter(({ item }) =>
      item.startsWith("tube bends")
    ),
    [],
  );
  for (const sheet of ["long-section", "fan-and-riser"]) {
    const corners = (inputs: typeof bent): number =>
      [...openSvg(drawSheets(inputs, "A4")[`${sheet}-A4.svg`]!).querySelectorAll("polyline")]
        .filter((node) => node.getAttribute("stroke") === "#1f6f8b")
        .reduce((sum, node) => sum + node.getAttribute("points")!.split(" ").length - 2, 0);
    assertEquals([corners(bent), corners(level)], [4, 0], sheet);
  }
});

Deno.test("a break in the long section leaves all dimensions true", () => {
  // Property: the length written on a broken drawing is that of the tube
  const svg = drawSheets(ODD_FIELDS["long house"]!, "A4")["long-section-A4.svg"]!;
  const words = textBoxes(svg).map((box) => box.words);
  assert(words.includes("55.00 m (180.4 ft)"));
  assert(words.some((one) => one.includes("omitted in the middle")));
});

/** Height of capital letters over the size of the letters, in the sans-serif font Liberation Sans. */
const CAPITALS = 1409 / 2048;

Deno.test("capital letters on the large papers are at least 2.5 mm high, on the others near 1.8 mm", () => {
  // Source: ISO 3098-1:2015, nominal sizes of lettering 1.8 and 2.5 mm, the height of capitals, from
  // memory; the font's own measures
  for (const { name, paper, svg } of SHEETS) {
    const least = paper === "A3" || paper === "Tabloid" ? 2.5 : 1.78;
    const document = openSvg(svg);
    const width = Number(document.querySelector("svg")!.getAttribute("viewBox")!.split(" ")[2]);
    const larger = paperSize(paper).width / width;
    for (const node of document.querySelectorAll("text")) {
      const height = CAPITALS * larger * numberOf(node, "font-size");
      assert(height >= least, `${name}: "${node.textContent}" is ${height} mm high`);
    }
  }
});

Deno.test("a reader of feet and inches meets metres in brackets alone, on every sheet and paper", () => {
  // Property: words of lengths; the same drawing behind them
  for (const [name, inputs] of Object.entries({ plain: exampleInputs(), ...ODD_FIELDS })) {
    for (const paper of PAPERS) {
      for (const [file, svg] of Object.entries(drawSheets({ ...inputs, units: "US" }, paper))) {
        const words = [...openSvg(svg).querySelectorAll("text")].map((one) => one.textContent!);
        const pairs = words.join(" ").replaceAll("\u00a0", " ")
          .replaceAll(/\([\d.]+ (?:mm|m)\)/g, "()");
        assert(!/\d (?:mm|m)\b/.test(pairs), `${name}, ${file}: ${words.join("\n")}`);
      }
    }
  }
  const words = textBoxes(
    drawSheets(exampleInputs({ units: "US" }), "A4")["plan-A4.svg"]!,
  ).map((box) => box.words);
  // 24 m and 20 m at 0.3048 m a foot, to half an inch
  assert(words.includes(`house 78'-9" (24.00 m)`), words.join("\n"));
  assert(words.includes(`tubes between header centres 65'-7 1/2" (20.00 m)`));
  assert(words.some((one) => one.includes("lengths in feet and inches")));
});

Deno.test("sheets in feet have the scales of an architect's or an engineer's rule, and a bar in feet", () => {
  // Source: from memory: architect's scales 3" to 1/16" = 1'-0", engineer's scales 1" = 20' to 100'
  const RULES: Readonly<Record<string, number>> = {
    [`1'-0" = 1'-0"`]: 1,
    [`6" = 1'-0"`]: 2,
    [`3" = 1'-0"`]: 4,
    [`1 1/2" = 1'-0"`]: 8,
    [`1" = 1'-0"`]: 12,
    [`3/4" = 1'-0"`]: 16,
    [`1/2" = 1'-0"`]: 24,
    [`3/8" = 1'-0"`]: 32,
    [`1/4" = 1'-0"`]: 48,
    [`3/16" = 1'-0"`]: 64,
    [`1/8" = 1'-0"`]: 96,
    [`3/32" = 1'-0"`]: 128,
    [`1/16" = 1'-0"`]: 192,
    [`1" = 20'`]: 240,
    [`1" = 30'`]: 360,
    [`1" = 40'`]: 480,
    [`1" = 50'`]: 600,
    [`1" = 60'`]: 720,
    [`1" = 100'`]: 1200,
  };
  for (const inputs of Object.values(ODD_FIELDS)) {
    for (const paper of ["Letter", "Tabloid"] as const) {
      for (const [name, svg] of Object.entries(drawSheets({ ...inputs, units: "US" }, paper))) {
        const document = openSvg(svg);
        const words = [...document.querySelectorAll("text")].map((one) => one.textContent!);
        const [, rule, ratio] = words.map((one) => /^Scale (.*) \(1:(\d+)\)/.exec(one))
          .find((found) => found !== null) ?? [];
        assertEquals(RULES[rule ?? ""], Number(ratio), `${name}: ${words.join("\n")}`);
        const root = document.querySelector("svg")!;
        const larger = paperSize(paper).width / Number(root.getAttribute("viewBox")!.split(" ")[2]);
        const bar = larger * [...document.querySelectorAll('rect[height="2"]')]
          .reduce((sum, part) => sum + numberOf(part, "width"), 0);
        const [, feet, inches, metres] = words
          .map((one) => /^bar = (?:(\d+)'-)?(\d+)" \(([\d.]+) m\)$/.exec(one))
          .find((found) => found !== null) ?? [];
        const told = 12 * Number(feet ?? 0) + Number(inches);
        assertAlmostEquals(bar * Number(ratio) / 25.4, told, 0.01 * told, name);
        assertAlmostEquals(Number(metres), told * 0.0254, 0.0051, name);
      }
    }
  }
});
