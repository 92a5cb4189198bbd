/** Holes on the unrolled header, with as many numbers as there is room for. @module */
import { group, max, min, pairs } from "d3-array";
import type { Hole, HoleLayout } from "../headers/mod.ts";
import type { Sheet } from "./sheet.ts";
import { circle, line, type PaperPoint, SMALLEST, text, textWidth } from "./svg.ts";

/** Height of a number, mm. */
const SIZE = SMALLEST;
/** mm kept free round a number */
const FREE = 0.6;
/** Steps in which holes are numbered. */
const STEPS = [1, 2, 5, 10, 20, 50, 100];

/** A number with its place. */
interface NumberMark {
  readonly at: PaperPoint;
  readonly words: string;
  readonly anchor: "start" | "middle" | "end";
}

/** Ends of the header on the paper, mm. */
interface HeaderEnds {
  readonly start: number;
  readonly stop: number;
}

/** All holes of one angle. */
interface HoleRow {
  readonly holes: readonly Hole[];
  /** height of the centres on the paper, mm */
  readonly y: number;
  /** radius on the paper, mm */
  readonly radius: number;
}

/** Circles with their centres, and the numbers of some of them. */
export function holeMarks(sheet: Sheet, layout: HoleLayout, end: number): Element[] {
  return [
    ...layout.holes.flatMap((hole) => holeMark(sheet, hole)),
    ...numberMarks(sheet, layout, end).map(({ at, words, anchor }) =>
      text(at, words, { anchor, size: SIZE })
    ),
  ];
}

function holeMark(sheet: Sheet, hole: Hole): Element[] {
  const centre = sheet.place(hole.along, -hole.around);
  const radius = sheet.length(hole.diameter / 2);
  const cross = Math.min(Math.max(0.6, radius * 0.35), radius);
  return [
    circle(centre, radius, { fill: "#fff", "stroke-width": Math.min(0.25, radius / 3) }),
    line({ x: centre.x - cross, y: centre.y }, { x: centre.x + cross, y: centre.y }, {
      "stroke-width": 0.12,
    }),
    line({ x: centre.x, y: centre.y - cross }, { x: centre.x, y: centre.y + cross }, {
      "stroke-width": 0.12,
    }),
  ];
}

/** Step of the numbers along a row: 1 where every hole has its own. */
export function numberStep(sheet: Sheet, layout: HoleLayout): number {
  const rows = [...group(layout.holes, ({ angle }) => angle).values()];
  const pitch = min(rows.flatMap((row) => pairs(row, (one, next) => next.along - one.along)));
  if (pitch === undefined) return 1;
  const room = sheet.length(pitch);
  const widest = textWidth(String(layout.holes.length), SIZE) + FREE;
  return STEPS.find((step) => step * room >= widest) ?? STEPS.at(-1)!;
}

function numberMarks(sheet: Sheet, layout: HoleLayout, end: number): NumberMark[] {
  const step = numberStep(sheet, layout);
  const rows = [...group(layout.holes, ({ angle }) => angle).values()].map((holes): HoleRow => ({
    holes,
    y: sheet.place(0, -holes[0]!.around).y,
    radius: sheet.length(holes[0]!.diameter / 2),
  }));
  const header = { start: sheet.place(-end, 0).x, stop: sheet.place(layout.run + end, 0).x };
  return rows.flatMap((row, index) => {
    const above = index === 0;
    const below = index > 0 && index === rows.length - 1;
    if (above || below || hasRoomAbove(row, rows[index - 1]!)) {
      return rowMarks(sheet, row, { step, below, header });
    }
    return endMarks(row, header);
  });
}

/** Room for numbers between a row and the one above it, whose own numbers stand above. */
function hasRoomAbove(row: HoleRow, upper: HoleRow): boolean {
  return row.y - upper.y >= row.radius + upper.radius + SIZE + 2 * FREE;
}

/** First and last hole of the row, and those between them in whole steps. */
function rowMarks(
  sheet: Sheet,
  { holes, y, radius }: HoleRow,
  given: { readonly step: number; readonly below: boolean; readonly header: HeaderEnds },
): NumberMark[] {
  const { start, stop } = given.header;
  const wanted = [
    holes[0]!,
    holes.at(-1)!,
    ...holes.filter((hole) => hole.number % given.step === 0),
  ];
  const placed: { readonly left: number; readonly right: number }[] = [];
  return wanted.flatMap((hole): NumberMark[] => {
    const words = String(hole.number);
    const half = (textWidth(words, SIZE) + FREE) / 2;
    const x = Math.min(Math.max(sheet.place(hole.along, 0).x, start + half), stop - half);
    const [left, right] = [x - half, x + half];
    if (placed.some((other) => left < other.right - 1e-9 && other.left < right - 1e-9)) return [];
    placed.push({ left, right });
    const height = given.below ? y + radius + 0.75 * SIZE + FREE : y - radius - FREE;
    return [{ at: { x, y: height }, words, anchor: "middle" }];
  });
}

/** First and last number beside the header, where there is no room between the rows. */
function endMarks({ holes, y }: HoleRow, { start, stop }: HeaderEnds): NumberMark[] {
  const level = y + 0.3 * SIZE;
  const first = {
    at: { x: start - 2 * FREE, y: level },
    words: String(holes[0]!.number),
    anchor: "end" as const,
  };
  if (holes.length === 1) return [first];
  return [first, {
    at: { x: stop + 2 * FREE, y: level },
    words: String(max(holes, ({ number }) => number)!),
    anchor: "start",
  }];
}
