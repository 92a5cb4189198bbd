// Property: every fault planted in the demo's winter is found, in its channel and at its time, and
// nothing else is but the rows that its loggers lost.
import { assert, assertEquals } from "@std/assert";
import { readDataTable } from "../../../lib/basics/mod.ts";
import { parseLogMap, readLog } from "../../../lib/measured/mod.ts";

const FOLDER = new URL("../../../data/logs/harrow-bend/", import.meta.url);
const text = (name: string) => Deno.readTextFileSync(new URL(name, FOLDER));
const DAY = 86400;

/** Days by which a finding's ends may be off: a drift and the sun show only after a while. */
const WITHIN: Readonly<Record<string, number>> = { drift: 12, sunHit: 2 };

Deno.test("readLog(): every fault planted in the demo's winter is found, and nothing else", () => {
  const map = parseLogMap(text("log-map.yaml"), "log-map.yaml", -6);
  const log = readLog(
    ["air.csv", "house.csv", "soil.csv"].map((file) => ({ file, text: text(file) })),
    map,
    { step: 900 },
  );
  for (const { read, rows } of log.files) assertEquals(read, rows);
  const planted = readDataTable(text("planted-faults.csv"), "planted-faults.csv", ["kind"]).map(
    (row) => ({
      kind: row.text("kind"),
      channels: [row.text("channel"), row.text("other")].filter((name) => name !== ""),
      from: Date.parse(row.text("from")) / 1000,
      to: Date.parse(row.text("to")) / 1000,
    }),
  );
  const meant = new Set<unknown>();
  for (const fault of planted) {
    const within = (WITHIN[fault.kind] ?? 0.2) * DAY;
    const found = log.findings.find((one) =>
      one.kind === fault.kind && fault.channels.includes(one.channel) &&
      Math.abs(one.from - fault.from) <= within && Math.abs(one.to - fault.to) <= within
    );
    assert(found !== undefined, `${fault.kind} of ${fault.channels.join(" and ")} is not found`);
    meant.add(found);
  }
  const others = log.findings.filter((one) => !meant.has(one) && one.kind !== "gap");
  assertEquals(others.map(({ message }) => message), []);
});
