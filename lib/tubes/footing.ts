/**
 * Does the pit keep clear of the ground that carries the footings?
 *
 * @module
 */
import { showBoth } from "../units/mod.ts";
import { allowance } from "./allowances.ts";
import type { Pit } from "./pit.ts";

/** The footings round the pit. */
export interface Footings {
  /** underside below the floor, m; 0 where there is none, null where nobody knows */
  readonly footingDepth: number | null;
  /** outline of the house along the tubes and across them, m */
  readonly house: { readonly along: number; readonly across: number };
}

/** Where the pit lies to a line that falls at 45 degrees from the footing's lower inner edge. */
export interface FootingLine {
  /** as given, m */
  readonly footingDepth: number | null;
  /** bottom of the pit at the low end of the tubes, m below the floor */
  readonly pitDepth: number;
  /** m from the footing's inner edge to the pit's lower edge where they are closest; negative under it */
  readonly distance: number;
  /** the same from the pit's upper edge, which is nearer where the sides are battered */
  readonly topEdge: number;
  /** m between the pit and the line, measured level; negative where it cuts; null where unknown */
  readonly room: number | null;
  /** m from the outline of the house to the line at the depth of the pit; null where none is drawn */
  readonly inset: number | null;
  /** m, least depth of footing that keeps the pit above the line; null where none does */
  readonly footingNeeded: number | null;
}

/**
 * Compares the pit with the 45° line from the footings. Battered sides must not reach the footing
 * either.
 *
 * Source: common practice, no source; weak soils need a flatter line. A geotechnical or structural
 * engineer decides; this is no permit.
 *
 * @param pit the pit, under the middle of the house
 * @param footings depth of the footings and outline of the house
 * @returns the line
 */
export function footingLine(pit: Pit, { footingDepth, house }: Footings): FootingLine {
  const toOutline = Math.min(
    (house.across - pit.width) / 2,
    (house.along - pit.length) / 2,
  );
  const distance = toOutline - allowance("footing width");
  const below = footingDepth === null ? 0 : Math.max(0, pit.lowEnd - footingDepth);
  const topEdge = distance - pit.batter * pit.lowEnd;
  return {
    footingDepth,
    pitDepth: pit.lowEnd,
    distance,
    topEdge,
    room: footingDepth === null ? null : Math.min(topEdge, distance - below),
    inset: below > 0 ? allowance("footing width") + below : null,
    footingNeeded: topEdge < 0 ? null : Math.max(0, pit.lowEnd - distance),
  };
}

const metres = (value: number): string => showBoth(value, "depth");

/** The line in one sentence, as it stands on the sheets and opens the notice. */
export function footingRemark(line: FootingLine): string {
  const { footingDepth, room, topEdge, footingNeeded } = line;
  if (room === null) {
    if (footingNeeded === null) {
      return `Footing depth unknown, and the pit reaches ${
        metres(-topEdge)
      } under the wall or footing: ` +
        "find out before digging";
    }
    return footingNeeded === 0
      ? "Footing depth unknown: find out before digging, although the pit stays above a 45° line " +
        "even from the floor"
      : `Footing depth unknown: find out before digging; the pit is above the 45° line only if the footing is at least ${
        metres(footingNeeded)
      } deep`;
  }
  if (topEdge < 0 && room === topEdge) {
    return `The pit reaches ${metres(-topEdge)} under the wall or footing: ask an engineer first`;
  }
  const from = footingDepth === 0 ? "from the floor at the wall" : "from the footing";
  const lead = footingDepth === 0 ? "No footing: " : "";
  const [the, space] = lead === "" ? ["The", "Clearance"] : ["the", "clearance"];
  return room < 0
    ? `${lead}${the} pit cuts the 45° line ${from} by ${metres(-room)}: ask an engineer first`
    : `${lead}${space} to the 45° line ${from} at the low end: ${metres(room)}`;
}

/** True where the line must be looked at before anybody digs. */
export function footingAtRisk({ room }: FootingLine): boolean {
  return room === null || room < 0;
}

/** The notice about the line; null where the pit is known to keep clear of it. */
export function footingWarning(line: FootingLine): string | null {
  if (!footingAtRisk(line)) return null;
  const place = line.distance < 0
    ? "under the wall or footing"
    : `${showBoth(line.distance, "depth")} from the footing's inner edge`;
  const mend = line.room === null
    ? 'Give "house.footingDepth", or 0 m (0 ft) if there is no footing.'
    : "Keep the tubes farther from the wall or shallower.";
  return `${footingRemark(line)}. The pit is ${
    metres(line.pitDepth)
  } deep at its low end, ${place}. ` +
    `${mend} A geotechnical or structural engineer decides; weak soils need a flatter line.`;
}
