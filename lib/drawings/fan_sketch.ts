/**
 * Elevation of intake, fan, risers and outlet.
 *
 * @module
 */
import { horizontalDimension, verticalDimension } from "./dimension.ts";
import { buriedPipes } from "./buried_pipes.ts";
import { type FieldGeometry, fieldGeometry } from "../headers/mod.ts";
import type { DrawingInputs } from "./inputs.ts";
import { COLOURS } from "./ground_parts.ts";
import { safetyNotes } from "./notes.ts";
import { caption, closeSheet, openSheet, type Paper, type Sheet } from "./sheet.ts";
import {
  circle,
  label,
  line,
  type PaperPoint,
  pipeRun,
  polyline,
  rectangle,
  SMALLEST,
  textWidth,
} from "./svg.ts";

/** m above the floor */
const OUTLET_HEIGHT = 0.4;
const FAN_HEIGHT = 1.2;
/** mm between two dimension lines with words between them */
const BESIDE = 22;
/** Height of names, mm */
const NAME_SIZE = SMALLEST;
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
  const sheet = openSheet(
    paper,
    {
      left: -half,
      right: half,
      top: -house.ridgeHeight,
      bottom: field.pit.lowEnd,
    },
    { left: 24 + BESIDE, right: 24, top: 6, bottom: 14 },
    { notes: safetyNotes("fan"), units: inputs.units },
  );
  sheet.content.push(
    ...houseOutline(sheet, field, inputs),
    ...risers(sheet, field, inputs),
    ...buriedPipes(sheet, field, { inputs, cut: 0 }),
    ...fanInRiser(sheet, field, inputs),
    ...outletArrow(sheet, field),
    ...names(sheet, field, inputs),
    ...dimensions(sheet, field, inputs),
    ...headline(sheet, inputs),
  );
  return closeSheet(sheet, {
    study: inputs.title,
    title: "Fan, riser and outlet, elevation",
    number,
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

/** Both risers, down to the lowest header that they serve. */
function risers(sheet: Sheet, field: FieldGeometry, inputs: DrawingInputs): Element[] {
  const { place } = sheet;
  const half = field.length / 2;
  const lowest = field.levels.at(-1)!.depth;
  const width = sheet.length(inputs.riserDiameter);
  const supply = [
    place(-half, lowest - field.fall / 2),
    ...intakeRun(field, inputs).map(([x, height]) => place(x, -height)),
  ];
  const back = [place(half, lowest + field.fall / 2), place(half, -OUTLET_HEIGHT)];
  return [supply, back].flatMap((points) => pipeRun(points, width, COLOURS.header));
}

/** Box of the fan on the paper. */
function fanBox(sheet: Sheet, field: FieldGeometry, { riserDiameter }: DrawingInputs) {
  const middle = sheet.place(-field.length / 2, -FAN_HEIGHT);
  return { middle, size: sheet.length(riserDiameter * 1.3) };
}

function fanInRiser(sheet: Sheet, field: FieldGeometry, inputs: DrawingInputs): Element[] {
  const { middle, size } = fanBox(sheet, field, inputs);
  const blade = size * 0.32;
  return [
    rectangle({ x: middle.x - size / 2, y: middle.y - size / 2 }, { width: size, height: size }, {
      fill: "#fff",
      "stroke-width": 0.4,
    }),
    circle(middle, blade, { "stroke-width": 0.25 }),
    polyline([
      { x: middle.x - blade * 0.7, y: middle.y - blade * 0.4 },
      { x: middle.x, y: middle.y + blade * 0.8 },
      { x: middle.x + blade * 0.7, y: middle.y - blade * 0.4 },
    ], { "stroke-width": 0.3 }),
  ];
}

function outletArrow(sheet: Sheet, field: FieldGeometry): Element[] {
  const end = sheet.place(field.length / 2, -OUTLET_HEIGHT);
  return [
    polyline([
      { x: end.x - 1.2, y: end.y - 1.6 },
      { x: end.x, y: end.y - 4 },
      { x: end.x + 1.2, y: end.y - 1.6 },
    ], { "stroke-width": 0.3 }),
  ];
}

/** Names of intake, fan and outlet, as long as the room between walls and risers allows. */
function names(sheet: Sheet, field: FieldGeometry, inputs: DrawingInputs): Element[] {
  const { fans, riserDiameter } = inputs;
  const side = sheet.length(riserDiameter / 2);
  const wall = sheet.place(field.houseAlong / 2, 0).x;
  const floor = sheet.place(0, 0).y;
  const box = fanBox(sheet, field, inputs);
  const [intakeX, intakeHeight] = intakeRun(field, inputs).at(-1)!;
  const intake = sheet.place(intakeX, -intakeHeight);
  const outlet = sheet.place(field.length / 2, -OUTLET_HEIGHT);
  const fan = fans === 1 ? "fan" : `fan, 1 of ${fans}`;
  const along = inputs.tubesInputs.direction === "along";
  return [
    ...fitted(
      along
        ? { x: intake.x + side + 2, y: intake.y + 2.6 }
        : { x: intake.x + 2, y: intake.y + 2 * side + 6 },
      wall,
      [
        ...along ? ["intake near the ridge: screen, rodent guard"] : [],
        "intake near the ridge",
        "intake",
      ],
    ),
    ...fitted(
      { x: box.middle.x + box.size / 2 + 2, y: box.middle.y + 0.9 },
      Math.abs(outlet.y - box.middle.y) < 6 ? outlet.x - side : wall,
      [`${fan}: guards, isolator, test port`, fan, "fan"],
    ),
    ...fitted(
      { x: outlet.x - side - 2, y: Math.min(outlet.y + 0.5, floor - 1.4) },
      sheet.place(-field.length / 2, 0).x + side,
      ["outlet low, along the cold edge", "outlet"],
    ),
  ];
}

/** The longest of some words that ends 2 mm before a limit to the right, or to the left of them. */
function fitted(at: PaperPoint, limit: number, words: readonly string[]): Element[] {
  const room = Math.abs(limit - at.x) - 2;
  const longest = words.find((one) => textWidth(one, NAME_SIZE) <= room);
  if (longest === undefined) return [];
  return [label(at, longest, { size: NAME_SIZE, anchor: limit < at.x ? "end" : "start" })];
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
      `ridge ${sheet.said.short(ridgeHeight)}`,
    ),
    ...verticalDimension(
      place(intakeAt, -intake),
      { x: left, y: place(0, 0).y },
      left - 4,
      `intake ${sheet.said.short(intake)}`,
    ),
    ...verticalDimension(
      place(half, 0),
      place(half, upper + drop),
      right + 5,
      sheet.said.short(upper + drop),
    ),
    ...horizontalDimension(
      place(-half, field.layers.at(-1)! - drop),
      place(half, field.layers.at(-1)! + drop),
      place(0, field.pit.lowEnd).y + 7,
      `header to header ${sheet.said.short(field.length)}`,
    ),
  ];
}

function headline(sheet: Sheet, inputs: DrawingInputs): Element[] {
  const { fans, riserDiameter, headersInputs } = inputs;
  const words = fans === 1 ? "One fan with a riser" : `${fans} fans, each with its own riser`;
  const pairs = headersInputs.groups === 1 ? "one pair" : `${headersInputs.groups} pairs`;
  return caption([
    `${words} of ${sheet.said.fine(riserDiameter)} inside diameter, ${pairs} of headers, layout ` +
    `${headersInputs.layout} (see the plan); risers insulated through the cold ground at the edge`,
    "Keep the intake away from vents, flues and chemical stores; where a riser serves several headers, " +
    "branch it with swept fittings",
  ]);
}
