import { words } from "../../../src-shared/wordTable.ts";

/** Marks that one system or another forbids in file names, and those that steer terminals. */
const forbidden = /[\p{Cc}\p{Cf}\\/:*?"<>|]+/gu;

/** A song's title as the name of a file with this ending; a title of nothing gives "Song". */
export const fileNameOf = (title: string, ending: string): string => {
  const plain = title.replaceAll(forbidden, " ").replaceAll(/\s+/g, " ");
  const name = [...plain]
    .slice(0, 100)
    .join("")
    .replaceAll(/^[. ]+|[. ]+$/g, "");
  return `${name || words.save.untitled}.${ending}`;
};
