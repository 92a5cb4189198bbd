import { assert, assertEquals } from "@std/assert";
import { inputRows } from "../../../lib/show/study/inputs.ts";
import { CHAPTERS, defaultStudyPath, openStudy } from "../../../lib/study/mod.ts";

Deno.test("inputRows() shows every section's inputs once, with unit and origin", async () => {
  // Property: nothing unreadable, defaults marked as such
  const study = await openStudy(defaultStudyPath(), {});
  for (const { name: section, section: { fields } } of CHAPTERS) {
    if (section === "climate") continue;
    const rows = inputRows(study, section);
    assert(rows.length >= Math.min(5, Object.keys(fields).length), section);
    assertEquals(new Set(rows.map((row) => row.key)).size, rows.length);
    for (const row of rows) {
      assert(!/undefined|NaN|\[object/.test(`${row.si} ${row.us}`), row.key);
      assert(row.from === "given" || row.from.startsWith("default: "), row.key);
    }
  }
});
