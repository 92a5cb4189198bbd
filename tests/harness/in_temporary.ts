/** A folder for one test. */
export async function inTemporary<T>(work: (folder: string) => Promise<T>): Promise<T> {
  const folder = await Deno.makeTempDir();
  try {
    return await work(folder);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}
