/**
 * Sheets of paper: size, scale, frame, title block, notes and scale bar.
 *
 * @module
 */
import { inert, OutOfRangeError } from "../basics/mod.ts";
import { inOrderOf, type UnitSystem } from "../units/mod.ts";
import { type LengthWords, lengthWords } from "./dimension.ts";
import { commonScales, scaleBar, scaleWords } from "./scale.ts";
import { element, line, type PaperPoint, rectangle, SMALLEST, text, textWidth } from "./svg.ts";

/**
 * Paper sizes a sheet can be printed on, always landscape; "report" is the drawing alone, cut out for
 * the width of a page and at no common scale.
 */
export type Paper = "A4" | "A3" | "Letter" | "Tabloid" | "report";

/** A paper, mm, and how much larger words and lines are drawn on it than on A4. */
interface PaperSize {
  readonly width: number;
  readonly height: number;
  readonly lettering: number;
}

/** The larger papers are for the site: capital letters of at least 2.5 mm. */
const PAPER_SIZES: Readonly<Record<Paper, PaperSize>> = {
  A4: { width: 297, height: 210, lettering: 1 },
  A3: { width: 420, height: 297, lettering: Math.SQRT2 },
  Letter: { width: 279.4, height: 215.9, lettering: 1 },
  Tabloid: { width: 431.8, height: 279.4, lettering: Math.SQRT2 },
  report: { width: 196, height: 150, lettering: 1 },
};

const FINE_SCALES = Array.from({ length: 2000 }, (_, index) => 5 * (index + 1));
const MARGIN = 8;
const NOTE_SIZE = SMALLEST;
const LINE_HEIGHT = 3.3;
/** Height of the strip at the foot of a sheet, mm; more where the notes need it. */
const STRIP_HEIGHT = 34;
/** Widths of title block and scale bar, mm. */
const TITLE_WIDTH = 78;
const BAR_WIDTH = 64;

/** What stands in the title block. */
export interface SheetTitle {
  readonly study: string;
  readonly title: string;
  /** such as "2 of 5" */
  readonly number: string;
}

/** An area of the real world, m; y grows downwards on the paper. */
export interface ModelArea {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A sheet under construction. */
export interface Sheet {
  readonly paper: Paper;
  /** width and height, mm of a drawing whose letters are as large as on A4 */
  readonly size: { readonly width: number; readonly height: number };
  /** metres of the world that one metre of paper shows */
  readonly scale: number;
  /** the world on the paper */
  place(x: number, y: number): PaperPoint;
  /** a length of the world in mm of paper */
  length(metres: number): number;
  /** mm from the top below which nothing is drawn */
  readonly end: number;
  /** what the reader is told at the foot */
  readonly notes: readonly string[];
  /** how lengths are written */
  readonly said: LengthWords;
  /** units of its lengths */
  readonly units: UnitSystem;
  readonly content: Element[];
}

/** Size of a sheet of paper, mm. */
export function paperSize(paper: Paper): { readonly width: number; readonly height: number } {
  const { width, height } = PAPER_SIZES[paper];
  return { width, height };
}

/** Size of a sheet in mm of a drawing whose letters are as large as on A4. */
export function drawnSize(paper: Paper): { readonly width: number; readonly height: number } {
  const { width, height, lettering } = PAPER_SIZES[paper];
  return { width: width / lettering, height: height / lettering };
}

/** mm left free round the drawn area for dimensions and words. */
export interface Border {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** mm at the head of every sheet that belong to its caption. */
const CAPTION_HEIGHT = 12;

/**
 * Opens a sheet at the largest common scale that shows the whole area with a border left free.
 *
 * @param given what the reader is told at the foot, and the units of lengths
 *
 * @throws {OutOfRangeError} if the area fits no scale up to 1:10 000
 */
export function openSheet(
  paper: Paper,
  area: ModelArea,
  border: Border,
  given: { readonly notes: readonly string[]; readonly units: UnitSystem },
): Sheet {
  const { units } = given;
  const notes = given.notes.map((note) => inOrderOf(units, note));
  const size = drawnSize(paper);
  const { lettering } = PAPER_SIZES[paper];
  const room = {
    width: size.width - 2 * MARGIN - border.left - border.right,
    height: size.height - 2 * MARGIN - (paper === "report" ? 0 : stripHeight(size, notes)) -
      CAPTION_HEIGHT -
      border.top - border.bottom,
  };
  const width = (area.right - area.left) * 1000 / lettering;
  const height = (area.bottom - area.top) * 1000 / lettering;
  const scales = paper === "report" ? FINE_SCALES : commonScales(units);
  const scale = scales.find((one) => width / one <= room.width && height / one <= room.height);
  if (scale === undefined) {
    throw new OutOfRangeError("drawing width", area.right - area.left, 0, 1500, "m");
  }
  const left = MARGIN + border.left + (room.width - width / scale) / 2;
  const spare = paper === "report" ? 0 : (room.height - height / scale) / 2;
  const top = MARGIN + CAPTION_HEIGHT + border.top + spare;
  return {
    paper,
    size,
    scale,
    place: (x, y) => ({
      x: left + (x - area.left) * 1000 / lettering / scale,
      y: top + (y - area.top) * 1000 / lettering / scale,
    }),
    length: (metres) => metres * 1000 / lettering / scale,
    end: top + height / scale + border.bottom,
    notes,
    said: lengthWords(units),
    units,
    content: [],
  };
}

/** Closes the sheet: frame, title block, notes and scale bar; gives the SVG file's text. */
export function closeSheet(sheet: Sheet, title: SheetTitle): string {
  return sheet.paper === "report" ? cutOut(sheet, title) : framed(sheet, title);
}

/** The drawing without frame and title block. */
function cutOut(sheet: Sheet, title: SheetTitle): string {
  const edge = MARGIN - 2;
  const head = 9; // the words at the head begin just below
  const size = { width: sheet.size.width - 2 * edge, height: sheet.end - head };
  const root = element("svg", {
    xmlns: "http://www.w3.org/2000/svg",
    width: `${size.width}mm`,
    height: `${size.height}mm`,
    viewBox: `${edge} ${head} ${size.width} ${size.height}`,
    ...LOOK,
  }, [
    element("title", {}, [`${title.title}, ${title.study}`]),
    rectangle({ x: edge, y: head }, size, { fill: "#fff", stroke: "none" }),
    ...sheet.content,
  ]);
  return `${root.outerHTML}\n`;
}

const LOOK = {
  "font-family": "Helvetica, Arial, 'DejaVu Sans', sans-serif",
  stroke: "#111",
  "stroke-width": 0.25,
  fill: "none",
  role: "img",
};

function framed(sheet: Sheet, title: SheetTitle): string {
  const { width, height } = sheet.size;
  const strip = height - MARGIN - stripHeight(sheet.size, sheet.notes);
  const thirds = { title: MARGIN, notes: MARGIN + TITLE_WIDTH, bar: width - MARGIN - BAR_WIDTH };
  const full = paperSize(sheet.paper);
  const frame = [
    rectangle({ x: MARGIN, y: MARGIN }, { width: width - 2 * MARGIN, height: height - 2 * MARGIN }),
    line({ x: MARGIN, y: strip }, { x: width - MARGIN, y: strip }),
    line({ x: thirds.notes, y: strip }, { x: thirds.notes, y: height - MARGIN }),
    line({ x: thirds.bar, y: strip }, { x: thirds.bar, y: height - MARGIN }),
  ];
  const background = rectangle({ x: 0, y: 0 }, sheet.size, { fill: "#fff", stroke: "none" });
  const root = element("svg", {
    xmlns: "http://www.w3.org/2000/svg",
    width: `${full.width}mm`,
    height: `${full.height}mm`,
    viewBox: `0 0 ${width} ${height}`,
    ...LOOK,
  }, [
    element("title", {}, [
      `${title.title}, ${title.study}, scale ${scaleWords(sheet.scale, sheet.units)}`,
    ]),
    background,
    ...sheet.content,
    ...frame,
    ...titleBlock(title, sheet, { x: thirds.title + 3, y: strip + 6 }),
    ...noteLines(sheet.size, sheet.notes).map((words, index) =>
      text({ x: thirds.notes + 3, y: strip + 4.5 + index * LINE_HEIGHT }, words, {
        size: NOTE_SIZE,
      })
    ),
    ...scaleBar(
      sheet.scale * PAPER_SIZES[sheet.paper].lettering,
      { x: thirds.bar + 4, y: strip + 16 },
      sheet.units,
    ),
  ]);
  return `${inert(root.outerHTML)}\n`;
}

function titleBlock(title: SheetTitle, sheet: Sheet, at: PaperPoint): Element[] {
  const [unit, scale] = [sheet.said.unit, scaleWords(sheet.scale, sheet.units)];
  const [behindPaper, behindScale] = sheet.units === "US" ? [` · ${unit}`, ""] : ["", ` · ${unit}`];
  return [
    text(at, title.title, { size: 3.6, bold: true }),
    ...wrap(title.study, TITLE_WIDTH - 8, 2.8).slice(0, 2).map((words, index) =>
      text({ x: at.x, y: at.y + 5.5 + index * 3.8 }, words, { size: 2.8 })
    ),
    text({ x: at.x, y: at.y + 16.5 }, `Sheet ${title.number} · ${sheet.paper}${behindPaper}`, {
      size: 2.6,
    }),
    text({ x: at.x, y: at.y + 21 }, `Scale ${scale} at full size${behindScale}`, { size: 2.6 }),
  ];
}

/** The notes as lines that fit between title block and scale bar. */
function noteLines(size: Sheet["size"], notes: readonly string[]): string[] {
  const width = size.width - 2 * MARGIN - TITLE_WIDTH - BAR_WIDTH - 6;
  return notes.flatMap((note) => wrap(note, width, NOTE_SIZE));
}

/** Height of the strip at the foot, with room for every note. */
function stripHeight(size: Sheet["size"], notes: readonly string[]): number {
  return Math.max(STRIP_HEIGHT, 4 + LINE_HEIGHT * noteLines(size, notes).length);
}

/** Breaks text into lines of a width in mm. */
export function wrap(content: string, width: number, size: number): string[] {
  const letters = Math.max(8, Math.floor(width / textWidth("n", size)));
  const lines: string[] = [];
  let current = "";
  for (const word of content.split(" ")) {
    if (current !== "" && current.length + 1 + word.length > letters) {
      lines.push(current);
      current = word;
    } else current = current === "" ? word : `${current} ${word}`;
  }
  if (current !== "") lines.push(current);
  return lines;
}

/** mm from the edge of the paper to the words at the head of a sheet. */
export const CAPTION_INSET = 12;
/** Height of the words at the head of a sheet, mm. */
export const CAPTION_SIZE = SMALLEST;

/** Words at the head of a sheet; the first line, or as many as told, may be warnings in bold. */
export function caption(lines: readonly string[], warnings: number | boolean = 0): Element[] {
  return lines.map((words, index) =>
    text({ x: CAPTION_INSET, y: 13.5 + 4 * index }, words, {
      size: CAPTION_SIZE,
      bold: index < Number(warnings),
    })
  );
}
