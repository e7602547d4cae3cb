import {
  SHARED_ENDING,
  SHARED_TYPE,
  type SharedSong,
  sharedSongsFile,
} from "../../../src-shared/book/sharedSongs.ts";
import { words } from "../../../src-shared/wordTable.ts";
import type { AppState } from "../../state/context.ts";
import type { BookSong } from "../../state/findSongs.ts";
import { download } from "../download.ts";
import { fileNameOf } from "../saving/fileNameOf.ts";

/** Hands the player one file with these songs, for another player; says so, or why not. */
export const shareSongs = async (
  { songbook, stand, patterns, notices }: AppState,
  songs: readonly BookSong[],
  name: string,
): Promise<void> => {
  await stand.song?.save();
  const shared: SharedSong[] = [];
  for (const { id, title, tags } of songs) {
    const answer = await songbook.read(id);
    if (!answer.ok) {
      notices.complain(answer.problem);
      return;
    }
    const { text, settings } = answer.value;
    shared.push({ title, text, settings, tags });
  }
  const file = fileNameOf(name, SHARED_ENDING);
  download(sharedSongsFile(shared, patterns.value), SHARED_TYPE, file);
  notices.say(words.songbook.sharing.done(file, shared.length));
};
