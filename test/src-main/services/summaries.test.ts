import { mkdir, utimes, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { makeSongbook } from "../../../src-main/services/songbook.ts";
import { tempFolder } from "../tempFolder.ts";
import { quietDisk } from "../testDisk.ts";

const chart = (index: number) =>
  `Title: Stile ${index}\nKey: G\nTempo: 108\n\n[Verse]\n${"| G | G | C | G |\n| G | Em | D | G |\n".repeat(4)}`;

test("a thousand songs are read once, and afterwards only those that changed", async () => {
  const folder = join(await tempFolder(), "songbook");
  await mkdir(folder);
  const names = Array.from({ length: 1000 }, (_, index) => join(folder, `stile-${index}.txt`));
  await Promise.all(names.map((path, index) => writeFile(path, chart(index))));
  const book = makeSongbook(folder, quietDisk());
  /** The processor's own time: what the wall's clock says depends on the neighbours. */
  const spent = async <T>(work: () => Promise<T>): Promise<readonly [T, number]> => {
    const before = process.cpuUsage();
    const done = await work();
    const { user, system } = process.cpuUsage(before);
    return [done, Math.round((user + system) / 1000)];
  };
  const [first, firstMs] = await spent(() => book.list());
  const [second, secondMs] = await spent(() => book.list());
  console.info(`1000 songs: listed in ${firstMs} ms of processor, again in ${secondMs} ms`);
  expect(second).toEqual(first);
  expect(first.ok && first.value.length).toBe(1000);

  await writeFile(join(folder, "stile-500.txt"), chart(500).replace("Stile 500", "Other weir"));
  const third = await book.list();
  const titles = third.ok ? third.value.map(({ title }) => title) : [];
  expect([titles.length, titles[0]]).toEqual([1000, "Other weir"]);
});

test("a chart of the same length and date but another text is read anew", async () => {
  const folder = join(await tempFolder(), "songbook");
  await mkdir(folder);
  const path = join(folder, "stile.txt");
  const book = makeSongbook(folder, quietDisk());
  const listed = async (text: string) => {
    await writeFile(path, text);
    await utimes(path, new Date(77_000), new Date(77_000));
    const list = await book.list();
    return list.ok ? list.value[0]?.title : null;
  };
  expect(await listed("Title: Tin\n| G |\n")).toBe("Tin");
  expect(await listed("Title: Oak\n| G |\n")).toBe("Oak");
});
