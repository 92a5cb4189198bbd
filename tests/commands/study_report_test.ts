import { assert, assertEquals, assertStringIncludes } from "@std/assert";
import { studyReport, studyWorkbook } from "winterground/commands/study_report.ts";
import type { Notebook } from "winterground/press/mod.ts";
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

Deno.test("studyReport() links to the page of doubt where the run has one, and nowhere else", async () => {
  // Property: once beside the contents, once where the numbers come from
  const study = await openSmallStudy();
  const results = { figures: {}, notices: [], provenance: PROVENANCE } as unknown as ResultsFile;
  const notebook = {
    cells: [],
    metadata: {},
    nbformat: 4,
    nbformat_minor: 5,
  } as unknown as Notebook;
  const report = (doubt: boolean) =>
    studyReport(study, results, [{ name: "10-report", notebook }], { doubt })!;
  const [before, after] = report(true).split('<h2 id="provenance">');
  for (const part of [before!, after!]) {
    assertEquals(part.split('<a href="doubt.html">').length, 2);
  }
  assert(!report(false).includes("doubt.html"));
});
