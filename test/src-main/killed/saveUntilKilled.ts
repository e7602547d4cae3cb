import { writeSync } from "node:fs";
import { makeHost } from "../../../src-main/services/makeHost.ts";
import type { Answer } from "../../../src-shared/host.ts";
import { seeded, settingsOf, textOf, titleOf } from "./savedStates.ts";

/**
 * The program that is killed: it makes, saves, removes and brings back songs without end, and says
 * before and after each what it does. What is written to a pipe stays in it when the writer dies.
 */
const [home = "", seed = "0", known = "[]"] = process.argv.slice(2);
const say = (...words: readonly (string | number)[]): void => {
  writeSync(1, `${words.join(" ")}\n`);
};

type Song = { readonly id: string; readonly song: number; count: number };

const given = <T>(answer: Answer<T>): T => {
  if (!answer.ok) {
    throw new Error(`${answer.problem.says} ${answer.problem.try}`);
  }
  return answer.value;
};

const saveForever = async (): Promise<never> => {
  const host = makeHost(home);
  const random = seeded(Number(seed));
  const songs: Song[] = JSON.parse(known);
  let next = 1 + Math.max(0, ...songs.map(({ song }) => song));
  say("ready");
  for (;;) {
    const chosen = songs[Math.floor(random() * songs.length)];
    const what = random();
    if (chosen === undefined || (what < 0.1 && songs.length < 6)) {
      const song = next;
      next += 1;
      say("making", song);
      const made = given(
        await host.createSong({
          title: titleOf(song),
          text: textOf(song, 0),
          settings: settingsOf(0),
        }),
      );
      songs.push({ id: made.id, song, count: 0 });
      say("made", song, made.id);
    } else if (what < 0.2) {
      say("removing", chosen.song);
      const { ticket } = given(await host.removeSong({ id: chosen.id }));
      say("removed", chosen.song, ticket);
      given(await host.restoreSong({ ticket }));
      say("restored", chosen.song);
    } else {
      const count = chosen.count + 1;
      say("saving", chosen.song, count);
      given(
        await host.writeSong({
          id: chosen.id,
          text: textOf(chosen.song, count),
          settings: settingsOf(count),
          before: textOf(chosen.song, chosen.count),
        }),
      );
      chosen.count = count;
      say("saved", chosen.song, count);
    }
  }
};

await saveForever();
