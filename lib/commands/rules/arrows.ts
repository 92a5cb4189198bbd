/**
 * Imports run one way: basics before chapters in the order of the job, then study, drawings, show.
 *
 * @module
 */
import { CHAPTERS } from "../../study/chapters.ts";
import type { ImportGraph } from "./import_graph.ts";

const GROUND = ["basics", "units", "air", "sun"];
const JOB = [...new Set([...CHAPTERS.map(({ name }) => name as string), "measured"])];
const ORDER = [...GROUND, ...JOB, "study", "drawings", "show", "live"];
/** Rooms of show in the order in which they may use each other. */
const SHOW_ORDER = ["kit", ...JOB, "study", "report", "lesson"];

/** What is wrong with an import from one file of the library to another; empty where it may be. */
function fault(from: string, to: string): string {
  const [room, inner] = from.split("/") as [string, string];
  const [other, otherInner] = to.split("/") as [string, string];
  if (!from.includes("/")) return "";
  if (!to.includes("/")) return room === "commands" ? "" : "the public module is for notebooks";
  if (room === "commands") return "";
  if (room === "press") {
    return [room, "basics"].includes(other) ? "" : "the press knows nothing of the job";
  }
  if (room === "show") return showFault(from, to, inner, otherInner);
  if (room === other) return "";
  if (!ORDER.includes(room) || !ORDER.includes(other)) return "a room without a place in the order";
  if (GROUND.includes(room) && !GROUND.includes(other)) return "a ground room uses only its like";
  const before = ORDER.indexOf(other) < ORDER.indexOf(room);
  return before || GROUND.includes(other) ? "" : "the arrow runs back";
}

function showFault(from: string, to: string, inner: string, otherInner: string): string {
  if (!to.startsWith("show/")) {
    if (!ORDER.includes(to.split("/")[0]!)) return "a room without a place in the order";
    return inner === "kit" && !/^(?:basics|units)\//.test(to)
      ? "the kit knows neither chapters nor study"
      : "";
  }
  const [own, other] = [SHOW_ORDER.indexOf(inner), SHOW_ORDER.indexOf(otherInner)];
  if (from.split("/").length === 2) return "";
  if (other < 0) return "a room of show does not use what collects the rooms";
  return other <= own ? "" : "the arrow runs back";
}

/** Every import that runs against the order, with what is wrong. */
export function arrowFaults(graph: ImportGraph): string[] {
  return [...graph].flatMap(([from, imports]) =>
    imports.flatMap((to) => {
      const wrong = fault(from, to);
      return wrong === "" ? [] : [`lib/${from}: imports lib/${to}: ${wrong}`];
    })
  );
}
