/** Words on a sheet and where they stand. */
import { parseHTML } from "linkedom";

/** Where words stand on a sheet, mm; the width of letters estimated. */
export interface Box {
  readonly words: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A sheet as a document. */
export function openSvg(svg: string): Document {
  return parseHTML(`<html><body>${svg}</body></html>`).document as unknown as Document;
}

/** A number of an element. */
export function numberOf(node: Element, name: string): number {
  return Number(node.getAttribute(name));
}

/** Boxes of all words of a sheet. */
export function textBoxes(svg: string): Box[] {
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
