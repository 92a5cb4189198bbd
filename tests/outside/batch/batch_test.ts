import { assert, assertEquals } from "@std/assert";
import { inTemporary } from "../../harness/in_temporary.ts";
import { writeSmallStudy } from "../../harness/small_study.ts";

const SCRIPT = new URL("./run.sh", import.meta.url).pathname;
/** Exit status of the script where the engines are not installed. */
const SKIPPED = 3;

const SWEEP = `chapters: [tubes, fan]
keys:
  tubes.length: [7 m, 8 m, 9 m]
  tubes.tube: [corrugated-4in, corrugated-3in]
`;

Deno.test({
  name: "a sweep gives the same bytes as an array of Slurm, under GNU parallel and in one process",
  ignore: Deno.build.os !== "linux",
  fn: () =>
    inTemporary(async (folder) => {
      // Source: the engines themselves, Debian's packages, run on loopback
      const study = await writeSmallStudy(folder);
      await Deno.writeTextFile(`${folder}/sweep.yaml`, SWEEP);
      const { code, stdout, stderr } = await new Deno.Command(SCRIPT, {
        args: [study, `${folder}/sweep.yaml`, `${folder}/batch`],
        env: { DENO: Deno.execPath() },
        stdin: "null",
      }).output();
      const text = new TextDecoder().decode(stdout);
      if (code === SKIPPED) return void Deno.stdout.writeSync(stdout); // says what to install
      assertEquals(code, 0, text + new TextDecoder().decode(stderr));
      for (const way of ["Slurm array of 3", "one task sent again", "GNU parallel, 3 parts"]) {
        assert(text.includes(`${way}: the same bytes, 6 rows`), text);
      }
    }),
});
