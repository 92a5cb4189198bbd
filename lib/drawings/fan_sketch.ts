/**
 * Elevation of intake, fan, risers and outlet.
 *
 * @module
 */
import { horizontalDimension, metres, verticalDimension } from "./dimension.ts";
import { buriedPipes } from "./buried_pipes.ts";
import { type DrawingInputs, type FieldGeometry, fieldGeometry } from "./field.ts";
import { COLOURS } from "./ground_parts.ts";
import { safetyNotes } from "./notes.ts";
import { caption, closeSheet, openSheet, type Paper, type Sheet } from "./sheet.ts";
import { circle, label, line, type PaperPoint, pipeRun, polyline, rectangle } from "./svg.ts";

/** m above the floor */
const OUTLET_HEIGHT = 0.4;
const FAN_HEIGHT = 1.2;
/** mm between two dimension lines with words between them */
const BESIDE = 22;
/** m that the intake stays below the roof */
const BELOW_ROOF = 0.4;

/**
 * Elevation to scale along the tubes: intake high, fan in the riser on the supply header, return
 * header and outlet low at the other end of the tubes.
 */
export function fanAndRiserSketch(inputs: DrawingInputs, paper: Paper, number: string): string {
  const field = fieldGeometry(inputs);
  const { house } = inputs;
  const half = field.houseAlong / 2;
  const sheet = openSheet(paper, {
    left: -half,
    right: half,
    top: -house.ridgeHeight,
    bottom: field.pit.lowEnd,
  }, { left: 24 + BESIDE, right: 24, top: 6, bottom: 14 });
  sheet.content.push(
    ...houseOutline(sheet, field, inputs),
    ...buriedPipes(sheet, field, { inputs, cut: 0 }),
    ...supplyRiser(sheet, field, inputs),
    ...outlet(sheet, field, inputs),
    ...dimensions(sheet, field, inputs),
    ...headline(inputs),
  );
  return closeSheet(sheet, {
    study: inputs.title,
    title: "Fan, riser and outlet, elevation",
    number,
    notes: safetyNotes("fan"),
  });
}

function houseOutline(sheet: Sheet, field: FieldGeometry, inputs: DrawingInputs): Element[] {
  const half = field.houseAlong / 2;
  const { eaveHeight, ridgeHeight } = inputs.house;
  const { place } = sheet;
  const floor = line(place(-half, 0), place(half, 0), { "stroke-width": 0.5 });
  const wall = { "stroke-width": 0.4 };
  if (inputs.tubesInputs.direction === "across") {
    const roof = [[-half, 0], [-half, eaveHeight], [0, ridgeHeight], [half, eaveHeight], [half, 0]];
    return [floor, polyline(roof.map(([x, height]) => place(x!, -height!)), wall)];
  }
  return [
    floor,
    rectangle(place(-half, -ridgeHeight), {
      width: sheet.length(field.houseAlong),
      height: sheet.length(ridgeHeight),
    }, wall),
    line(place(-half, -eaveHeight), place(half, -eaveHeight), {
      "stroke-width": 0.15,
      "stroke-dasharray": "4 1.5",
    }),
  ];
}

/** Run of the intake duct in the house, m: up the wall, and along the roof where the ridge is away. */
function intakeRun(field: FieldGeometry, inputs: DrawingInputs): [number, number][] {
  const { eaveHeight, ridgeHeight } = inputs.house;
  const x = -field.length / 2;
  const below = Math.max(BELOW_ROOF, 0.7 * inputs.riserDiameter);
  if (inputs.tubesInputs.direction === "along") return [[x, ridgeHeight - below]];
  const half = field.houseAlong / 2;
  const roofAbove = eaveHeight + (ridgeHeight - eaveHeight) * (half + x) / half;
  const knee = Math.max(FAN_HEIGHT + inputs.riserDiameter, roofAbove - 1.6 * below);
  return [[x, knee], [-inputs.riserDiameter / 2, ridgeHeight - 1.6 * below]];
}

function supplyRiser(sheet: Sheet, field: FieldGeometry, inputs: DrawingInputs): Element[] {
  const { place } = sheet;
  const { riserDiameter, fans } = inputs;
  const x = -field.length / 2;
  const bottom = field.levels[0]!.depth - field.fall / 2 - inputs.headersInputs.diameter / 2;
  const run = intakeRun(field, inputs);
  const points: PaperPoint[] = [
    place(x, bottom),
    ...run.map(([across, height]) => place(across, -height)),
  ];
  const end = points.at(-1)!;
  const side = sheet.length(riserDiameter / 2);
  const box = place(x - riserDiameter * 0.65, -FAN_HEIGHT - riserDiameter * 0.65);
  const size = sheet.length(riserDiameter * 1.3);
  const middle = { x: box.x + size / 2, y: box.y + size / 2 };
  const blade = size * 0.32;
  const words = inputs.tubesInputs.direction === "along"
    ? label({ x: end.x + side + 2, y: end.y + 2.6 }, "intake near the ridge: screen, rodent guard")
    : label({ x: end.x + 2, y: end.y + 2 * side + 6 }, "intake near the ridge");
  return [
    ...pipeRun(points, 2 * side, COLOURS.header),
    rectangle(box, { width: size, height: size }, { fill: "#fff", "stroke-width": 0.4 }),
    circle(middle, blade, { "stroke-width": 0.25 }),
    polyline([
      { x: middle.x - blade * 0.7, y: middle.y - blade * 0.4 },
      { x: middle.x, y: middle.y + blade * 0.8 },
      { x: middle.x + blade * 0.7, y: middle.y - blade * 0.4 },
    ], { "stroke-width": 0.3 }),
    words,
    label(
      { x: box.x + size + 2, y: middle.y + 0.9 },
      `${fans === 1 ? "fan" : `fan, 1 of ${fans}`}: guards, isolator, test port`,
    ),
  ];
}

function outlet(sheet: Sheet, field: FieldGeometry, inputs: DrawingInputs): Element[] {
  const { place } = sheet;
  const x = field.length / 2;
  const top = field.levels[0]!.depth + field.fall / 2 -
    inputs.headersInputs.returnDiameter / 2;
  const end = place(x, -OUTLET_HEIGHT);
  const side = sheet.length(inputs.riserDiameter / 2);
  return [
    ...pipeRun([place(x, top), end], 2 * side, COLOURS.header),
    polyline([
      { x: end.x - 1.2, y: end.y - 1.6 },
      { x: end.x, y: end.y - 4 },
      { x: end.x + 1.2, y: end.y - 1.6 },
    ], { "stroke-width": 0.3 }),
    label({ x: end.x - side - 2, y: end.y + 0.5 }, "outlet low, along the cold edge", {
      anchor: "end",
    }),
  ];
}

function dimensions(sheet: Sheet, field: FieldGeometry, inputs: DrawingInputs): Element[] {
  const { place } = sheet;
  const { ridgeHeight } = inputs.house;
  const left = place(-field.houseAlong / 2, 0).x;
  const right = place(field.houseAlong / 2, 0).x;
  const half = field.length / 2;
  const drop = field.fall / 2;
  const top = inputs.tubesInputs.direction === "across" ? 0 : -field.houseAlong / 2;
  const upper = field.layers[0]!;
  const [intakeAt, intake] = intakeRun(field, inputs).at(-1)!;
  return [
    ...verticalDimension(
      place(top, -ridgeHeight),
      { x: left, y: place(0, 0).y },
      left - 4 - BESIDE,
      `ridge ${metres(ridgeHeight)}`,
    ),
    ...verticalDimension(
      place(intakeAt, -intake),
      { x: left, y: place(0, 0).y },
      left - 4,
      `intake ${metres(intake)}`,
    ),
    ...verticalDimension(
      place(half, 0),
      place(half, upper + drop),
      right + 5,
      metres(upper + drop),
    ),
    ...horizontalDimension(
      place(-half, field.layers.at(-1)! - drop),
      place(half, field.layers.at(-1)! + drop),
      place(0, field.pit.lowEnd).y + 7,
      `header to header ${metres(field.length)}`,
    ),
  ];
}

function headline(inputs: DrawingInputs): Element[] {
  const { fans, riserDiameter, headersInputs } = inputs;
  const words = fans === 1 ? "One fan with a riser" : `${fans} fans, each with its own riser`;
  const pairs = headersInputs.groups === 1 ? "one pair" : `${headersInputs.groups} pairs`;
  return caption([
    `${words} of ${riserDiameter.toFixed(3)} m inside diameter, ${pairs} of headers, layout ` +
    `${headersInputs.layout} (see the plan); risers insulated through the cold ground at the edge`,
    "Keep the intake away from vents, flues and chemical stores; where a riser serves several headers, " +
    "branch it with swept fittings",
  ]);
}
