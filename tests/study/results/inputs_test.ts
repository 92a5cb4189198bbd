import { assert, assertEquals, assertStringIncludes } from "@std/assert";
import fc from "fast-check";
import { basename, join } from "node:path";
import { inputPlaces } from "winterground/study/file/kept_inputs.ts";
import { openStudy } from "winterground/study/file/open.ts";
import { inputHashes, INPUTS, keptAt, writeInputs } from "winterground/study/results/inputs.ts";
import { inTemporary } from "../../harness/in_temporary.ts";
import { writeSmallStudy } from "../../harness/small_study.ts";

const NAME = fc.constantFrom(
  "a.csv",
  "A.csv",
  "./a.csv",
  "sub/a.csv",
  "../a.csv",
  "/far/away/a.csv",
  "elsewhere",
  "elsewhere.json",
  "elsewhere/1/a.csv",
  "small.yaml",
  "..\\a.csv",
  "odd\nname.csv",
  "sub/../../b.csv",
  "äö ü.csv",
);

Deno.test("inputPlaces() gives every file a place of its own inside the folder", () => {
  // Property: places differ on every system, lead nowhere else, and hide no other
  fc.assert(
    fc.property(fc.array(fc.option(NAME, { nil: undefined }), { maxLength: 8 }), (names) => {
      const given = (by: string, path: string, name?: string) => ({
        by,
        name,
        path,
        bytes: new Uint8Array(),
      });
      const files = [
        given("study", "/home/someone/small.yaml"),
        ...names.map((name, k) =>
          given(String(k), name === undefined ? "/x/y.csv" : join("/home/someone", name), name)
        ),
      ];
      const places = inputPlaces(files).map(({ place }) => place);
      assertEquals(places[0], "small.yaml");
      assertEquals(new Set(places.map((place) => place.toLowerCase())).size, files.length);
      for (const place of places) {
        assert(/^[\p{L}\p{N}_. /-]+$/u.test(place), place);
        assert(!place.startsWith("/") && !place.split("/").includes(".."), place);
        assert(!places.some((other) => other.startsWith(`${place}/`)), place);
      }
    }),
  );
});

Deno.test("the inputs kept with a run are those given, to the byte, and open as the same study", async () => {
  // Property: a mark before the text, line ends of Windows and a way that leads out of the folder stay
  await inTemporary(async (folder) => {
    const own = join(folder, "studies");
    await Deno.mkdir(own);
    const path = await writeSmallStudy(
      own,
      (text) =>
        `\uFEFF${text.replace("normals.csv", "../weather/normals.csv").replaceAll("\n", "\r\n")}`,
    );
    await Deno.mkdir(join(folder, "weather"));
    await Deno.rename(join(own, "normals.csv"), join(folder, "weather", "normals.csv"));
    const study = await openStudy(path);
    const out = join(folder, "out");
    await writeInputs(study, out);
    const kept = keptAt(study.files, "study")!;
    assertEquals(basename(kept), basename(path));
    assertEquals(await Deno.readFile(join(out, kept)), await Deno.readFile(path));
    assertEquals(keptAt(study.files, "climate.normals"), `${INPUTS}/elsewhere/1/normals.csv`);
    assertStringIncludes(
      await Deno.readTextFile(join(out, INPUTS, "elsewhere.json")),
      '"../weather/normals.csv": "elsewhere/1/normals.csv"',
    );
    await Deno.remove(own, { recursive: true });
    await Deno.remove(join(folder, "weather"), { recursive: true });
    const again = await openStudy(join(out, kept));
    assertEquals(again.inputHash, study.inputHash);
    assertEquals(again.climate.dryBulb, study.climate.dryBulb);
    assertEquals(inputHashes(again.files), inputHashes(study.files));
  });
});
