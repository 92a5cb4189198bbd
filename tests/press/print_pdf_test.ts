import { assert, assertEquals, assertRejects } from "@std/assert";
import { join } from "node:path";
import { findBrowser, PrintFailure, printPdf } from "winterground/press/mod.ts";
import { withTime } from "winterground/press/printer.ts";
import { browserStep } from "../harness/browser.ts";
import { inTemporary } from "../harness/in_temporary.ts";

const latin = (bytes: Uint8Array) =>
  Array.from(bytes, (byte) => String.fromCharCode(byte)).join("");

Deno.test("withTime() sets the times of a PDF in their place, and nothing else", () => {
  // Source: ISO 32000-1:2008, 7.9.4: dates as (D:YYYYMMDDHHmmSS), from memory
  const text =
    "%PDF /CreationDate (D:20260102030405+00'00') /ModDate (D:20260102030405+00'00') D:2026";
  const set = latin(withTime(new TextEncoder().encode(text), "2025-12-31T23:59:58Z"));
  assertEquals(
    set,
    "%PDF /CreationDate (D:20251231235958+00'00') /ModDate (D:20251231235958+00'00') D:2026",
  );
});

Deno.test("findBrowser() takes the first on the search path, and says where there is none", async () => {
  // Property: a file of the name, in the order of the folders; folders of that name are none
  if (Deno.build.os !== "linux") return;
  await inTemporary(async (folder) => {
    assertEquals(await findBrowser(folder), null);
    await Deno.mkdir(join(folder, "a", "chromium"), { recursive: true });
    await Deno.mkdir(join(folder, "b"));
    await Deno.writeTextFile(join(folder, "b", "chromium"), "");
    assertEquals(await findBrowser(`${folder}/a:${folder}/b`), join(folder, "b", "chromium"));
  });
});

Deno.test("a browser that fails is named with what it said", async () => {
  // Property: no half-written file is taken for a page
  await inTemporary(async (folder) => {
    const [page, pdf] = [join(folder, "page.html"), join(folder, "page.pdf")];
    await Deno.writeTextFile(page, "<p>words</p>");
    const request = { browser: join(folder, "none"), page, pdf, time: "2026-01-01T00:00:00Z" };
    await assertRejects(() => printPdf(request), PrintFailure, "cannot print");
    assertEquals(await Deno.stat(pdf).catch(() => null), null);
  });
});

Deno.test("pages printed by a browser", async (test) => {
  // Property: paper as the page asks for it; the same bytes each time
  await browserStep(
    test,
    "a page has the paper it names, and the same bytes each time",
    async () => {
      const browser = (await findBrowser(Deno.env.get("PATH") ?? ""))!;
      await inTemporary(async (folder) => {
        const page = join(folder, "page.html");
        await Deno.writeTextFile(
          page,
          "<!DOCTYPE html><style>@page{size:420mm 297mm;margin:0}p{break-after:page}</style><p>a<p>b",
        );
        const print = async (name: string) => {
          const pdf = join(folder, name);
          await printPdf({ browser, page, pdf, time: "2026-01-01T00:00:00Z" });
          return await Deno.readFile(pdf);
        };
        const [one, two] = [await print("one.pdf"), await print("two.pdf")];
        assertEquals(one, two);
        const text = latin(one);
        assert(text.includes("D:20260101000000"));
        const boxes = [...text.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
        assert(boxes.length >= 2);
        for (const [, width, height] of boxes) {
          assert(Math.abs(Number(width) - 420 / 25.4 * 72) < 1, width);
          assert(Math.abs(Number(height) - 297 / 25.4 * 72) < 1, height);
        }
      });
    },
  );
});
