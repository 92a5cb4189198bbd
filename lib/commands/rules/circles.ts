/**
 * No file reaches itself through its imports, and no room reaches itself through other rooms.
 *
 * @module
 */
import { posix } from "node:path";
import type { ImportGraph } from "./import_graph.ts";

/**
 * Groups of nodes that reach each other (strongly connected components), only those of more than one
 * node. Each node gets the lowest number it can reach; a group is closed at its first node.
 *
 * @param graph nodes with the nodes they lead to
 * @returns each group sorted by name
 */
export function circlesOf(graph: ImportGraph): string[][] {
  const order = new Map<string, number>();
  const lowest = new Map<string, number>();
  const open: string[] = [];
  const found: string[][] = [];
  const visit = (node: string): void => {
    order.set(node, order.size);
    lowest.set(node, order.get(node)!);
    open.push(node);
    for (const next of graph.get(node) ?? []) {
      if (!order.has(next)) {
        visit(next);
        lowest.set(node, Math.min(lowest.get(node)!, lowest.get(next)!));
      } else if (open.includes(next)) {
        lowest.set(node, Math.min(lowest.get(node)!, order.get(next)!));
      }
    }
    if (lowest.get(node) !== order.get(node)) return;
    const group = open.splice(open.indexOf(node));
    if (group.length > 1) found.push(group.sort());
  };
  for (const node of graph.keys()) if (!order.has(node)) visit(node);
  return found;
}

/**
 * The graph of rooms within chapters: `store/air`, `house/skin`. Files that stand in the chapter's
 * own folder (its types, its computation) may use every room and be used by every room.
 */
export function roomsOf(graph: ImportGraph): ImportGraph {
  const rooms = new Map<string, string[]>();
  for (const [from, imports] of graph) {
    const room = roomOf(from);
    if (room === undefined) continue;
    const others = imports.map(roomOf).filter((other) => other !== undefined && other !== room);
    rooms.set(room, [...rooms.get(room) ?? [], ...others as string[]]);
  }
  return rooms;
}

function roomOf(path: string): string | undefined {
  const parts = posix.dirname(path).split("/");
  return parts.length < 2 ? undefined : parts.slice(0, 2).join("/");
}

/** Every circle of files and of rooms. */
export function circleFaults(graph: ImportGraph): string[] {
  return [
    ...circlesOf(graph).map((group) =>
      `files import each other: ${group.map((path) => `lib/${path}`).join(", ")}`
    ),
    ...circlesOf(roomsOf(graph)).map((group) =>
      `rooms use each other: ${group.map((path) => `lib/${path}`).join(", ")}`
    ),
  ];
}
