import { assert, assertEquals } from "@std/assert";
import { defaultStudyPath } from "winterground/study/file/check_study.ts";
import { task } from "../harness/task.ts";

Deno.test("bad input ends the study command with exit status 2, file and line, and no output folder", async () => {
  // Property: nothing half-written
  const folder = await Deno.makeTempDir();
  try {
    const demo = await Deno.readTextFile(defaultStudyPath());
    const write = async (name: string, text: string) => {
      await Deno.writeTextFile(`${folder}/${name}`, text);
      return name;
    };
    const cases: readonly (readonly [words: string, ...args: string[]])[] = [
      [
        "negative.yaml:",
        await write("negative.yaml", demo.replace("length: 24 m", "length: -24 m")),
      ],
      ["no such file", defaultStudyPath(), "--climate", "absent.csv"],
      ["columns file", defaultStudyPath(), "--climate", await write("odd.csv", "a,b\n1,2\n")],
    ];
    const runs = await Promise.all(cases.map(async ([words, ...args]) => {
      const { code, stderr } = await task("study", [...args, "--out", "result"], folder).output();
      return { words, args, code, message: new TextDecoder().decode(stderr) };
    }));
    for (const { words, args, code, message } of runs) {
      assertEquals(code, 2, `${args.join(" ")}: ${message}`);
      assert(message.includes(words), `${args.join(" ")}: ${message}`);
    }
    const names = [...Deno.readDirSync(folder)].map(({ name }) => name).sort();
    assertEquals(names, ["negative.yaml", "odd.csv"]);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});
