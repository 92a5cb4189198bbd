/** Frames in which what is wider than a window scrolls by itself, with keys too. @module */
import { parseHTML } from "linkedom";

/** Text height below which a chart cannot be read on a phone, px. */
const LEAST_TEXT = 9;
/** Most a picture is widened for that, px: a drawing of a whole field is looked at in parts. */
const MOST_WIDTH = 1000;

/** A table that may be wider than the window gets a frame that scrolls, with keys too. */
function frameTable(table: Element, otherwise: string): void {
  const rows = Array.from(table.querySelectorAll("tr"));
  const columns = Math.max(0, ...rows.map(({ children }) => children.length));
  if (columns < 3) return;
  frameAround(table).setAttribute("aria-label", labelOf(table) ?? otherwise);
}

const KEY = /^[a-z]\w*(?:\.\w+)+$/i;

/** Lets keys such as "store.coldestHour" break between their words before a table gets too wide. */
function breakKeys(table: Element): void {
  for (const cell of table.querySelectorAll("td")) {
    const text = cell.textContent ?? "";
    if (cell.children.length > 0 || !KEY.test(text)) continue;
    cell.innerHTML = text.replaceAll(/(?<=\.)|(?<=[a-z])(?=[A-Z])/g, "<wbr>");
  }
}

/** Puts an element into a frame of its own. */
function frameAround(element: Element): Element {
  const frame = element.ownerDocument.createElement("div");
  frame.setAttribute("class", "frame");
  frame.setAttribute("role", "group");
  frame.setAttribute("tabindex", "0");
  element.replaceWith(frame);
  frame.append(element);
  return frame;
}

/** Title of a figure or table, for those who do not see it. */
function labelOf(numbered: Element | null): string | undefined {
  const words = numbered?.querySelector("caption, figcaption")?.textContent?.trim();
  return words === "" ? undefined : words;
}

/** Gives a picture the width at which its smallest words can be read; a narrow window scrolls it. */
function widenPicture(picture: Element, otherwise: string): void {
  const frame = frameAround(picture);
  frame.setAttribute("aria-label", `${labelOf(picture.closest("figure")) ?? otherwise}, picture`);
  const base64 = /^data:image\/svg\+xml;base64,(.*)$/.exec(picture.getAttribute("src") ?? "")?.[1];
  if (base64 === undefined) return;
  const drawing = atob(base64);
  const width = Number(/\bviewBox="\S+ \S+ ([\d.]+)/.exec(drawing)?.[1]);
  const smallest = Math.min(
    ...Array.from(drawing.matchAll(/font-size="([\d.]+)/g), ([, size]) => Number(size)),
  );
  const least = Math.min(MOST_WIDTH, Math.ceil((width * LEAST_TEXT) / smallest));
  if (least > 0) picture.setAttribute("style", `min-width:${least}px`);
}

/**
 * Puts the wide tables and the pictures below an element into frames.
 *
 * @param otherwise name of what has no title of its own
 */
export function putInFrames(body: Element, otherwise = "Table behind the picture"): void {
  for (const picture of body.querySelectorAll("figure img")) widenPicture(picture, otherwise);
  for (const table of body.querySelectorAll("table")) {
    breakKeys(table);
    frameTable(table, otherwise);
  }
}

/**
 * A fragment with its wide tables and its pictures in frames.
 *
 * @param html fragment without scripts
 * @param heading names what has no title of its own
 */
export function inFrames(html: string, heading: string): string {
  const { document } = parseHTML(`<!DOCTYPE html><html><body>${html}</body></html>`);
  const body = document.body as unknown as Element;
  putInFrames(body, heading);
  return body.innerHTML;
}
