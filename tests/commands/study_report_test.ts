import { assert, assertStringIncludes } from "@std/assert";
import { studyWorkbook } from "winterground/commands/study_report.ts";
import type { ResultsFile } from "winterground/study/mod.ts";
import { openSmallStudy } from "../harness/small_study.ts";

const PROVENANCE = {
  studyHash: "a",
  climateHash: "b",
  library: { version: "0", hash: "c" },
  deno: "2",
  time: "2026-01-01",
};

Deno.test("studyWorkbook() leads with the verdict where there is one, and with none where there is not", async () => {
  // Property: the word of the figure stands in the head, before the notices
  const study = await openSmallStudy();
  const report = (figures: object) =>
    studyWorkbook(
      study,
      { figures, notices: [], provenance: PROVENANCE } as unknown as ResultsFile,
      [],
    );
  const head = report({
    "worth.verdict": { value: "not yet", unit: "text", label: "" },
  }).split("</header>")[0]!;
  assertStringIncludes(head, "not yet (of dig, not yet, no)");
  assertStringIncludes(head, "Odds");
  assertStringIncludes(head, "notebook 08");
  assert(!report({}).includes("Verdict"));
});
