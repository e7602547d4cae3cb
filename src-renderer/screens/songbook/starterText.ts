import { words } from "../../../src-shared/wordTable.ts";

/** What a new song's title is until the player gives it one. */
export const STARTER_TITLE: string = words.songbook.newSong;

/** A new song's chart: every header that matters, and a first line to change. */
export const starterText: string = `Title: ${STARTER_TITLE}
Key: G
Time: 4/4
Tempo: 110

[Verse]
| G | G | C | G |
| G | G | D | G |
`;
