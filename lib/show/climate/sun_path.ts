/** The sun's paths over the skyline. @module */
import { showNumber } from "../../units/mod.ts";
import * as Plot from "@observablehq/plot";
import type { DayPath } from "../../sun/mod.ts";
import type { Daylight } from "../../climate/mod.ts";
import type { Place } from "../../climate/types.ts";
import { dayName } from "../kit/calendar.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { GREY, PALETTE } from "../kit/palette.ts";

/** Days with their name at the path: those between lie too close. */
const LABELLED: readonly number[] = [355, 52, 80, 111, 172];

/**
 * Paths of the sun from December to June as seen from a place, with the skyline that hides it.
 *
 * @param place where
 * @param daylight sun paths and skyline of the place
 * @returns the figure, with daylight and hidden hours in its table
 */
export function sunPathChart(
  place: Pick<Place, "name" | "latitude">,
  daylight: Daylight,
): DisplayItem {
  const { paths } = daylight;
  const middle = place.latitude < 0 ? 0 : 180;
  const turned = (azimuth: number) => ((azimuth - middle + 540) % 360) - 180;
  const lines = paths.flatMap((path) =>
    path.points.map((point) => ({ ...point, day: path.day, x: turned(point.azimuth) }))
  );
  const marks = lines.filter((point) => {
    const past = point.clock % 1;
    return past < 0.05 && (point.day === 355 || point.day === 172);
  });
  const skyline = daylight.skyline
    .map(({ azimuth, elevation }) => ({ x: turned(azimuth), elevation }))
    .filter(({ x }) => Math.abs(x) <= 150)
    .sort((a, b) => a.x - b.x);
  return figure({
    height: 360,
    x: {
      label: "azimuth from north, degrees",
      domain: [-150, 150],
      ticks: [-135, -90, -45, 0, 45, 90, 135],
      tickFormat: azimuthLabel(middle),
    },
    y: { label: "height of the sun, degrees", domain: [0, 90], grid: true },
    marks: [
      Plot.areaY(skyline, { x: "x", y: "elevation", fill: GREY }),
      Plot.lineY(skyline, { x: "x", y: "elevation", stroke: PALETTE.ink }),
      Plot.line(lines, {
        x: "x",
        y: "elevation",
        z: "day",
        stroke: PALETTE.warm,
        strokeWidth: 1.5,
      }),
      Plot.dot(marks, { x: "x", y: "elevation", fill: PALETTE.ink, r: 2 }),
      ...[172, 355].map((day) =>
        Plot.text(marks.filter((point) => point.day === day && Math.round(point.clock) % 2 === 0), {
          x: "x",
          y: "elevation",
          text: (point: { clock: number }) => String(Math.round(point.clock)),
          dy: day === 172 ? -9 : 11,
        })
      ),
      Plot.text(paths.filter(({ day }) => LABELLED.includes(day)), {
        x: () => 0,
        y: "highest",
        text: dayLabel,
        dy: -8,
        fill: PALETTE.ink,
        stroke: "white",
        strokeWidth: 4,
      }),
    ],
  }, {
    title: "Sun paths, December to June",
    alt:
      `Sun paths at ${place.name}: noon height from ${
        showNumber(paths[0]!.highest, 0)
      } degrees in ` +
      `December to ${showNumber(paths.at(-1)!.highest, 0)} degrees in June; ` +
      `${showNumber(paths[0]!.hidden, 1)} of ${
        showNumber(paths[0]!.daylight, 1)
      } hours of the December sun are ` +
      "behind the skyline.",
    note:
      "Dots mark hours of standard time. From July to November the sun retraces the same paths.",
    legend: [
      { label: "sun path on the 21st", colour: PALETTE.warm, sign: "line" },
      { label: "skyline", colour: GREY },
    ],
    table: dataTable(paths, [
      { head: "day", value: dayLabel },
      { head: "noon height, degrees", value: (path) => path.highest, digits: 1 },
      { head: "daylight, h", value: (path) => path.daylight, digits: 1 },
      { head: "behind the skyline, h", value: (path) => path.hidden, digits: 1 },
    ]),
  });
}

function dayLabel(path: DayPath): string {
  return dayName(path.day - 1);
}

function azimuthLabel(middle: number): (x: number) => string {
  return (x) => String((x + middle + 360) % 360);
}
