import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { bookOf } from "../../../src-shared/sheet/bookOf.ts";
import { openTypefaces } from "../../../src-shared/sheet/typefaces.ts";
import { writePdf } from "../../../src-shared/sheet/writePdf.ts";
import type { HandOutMessage, HandOutQuestion, HandOutSource } from "./handOutMessage.ts";

const say = (message: HandOutMessage): void => self.postMessage(message);

const walkOf = ({ text, settings, patterns, ownHand }: HandOutSource) =>
  chartToScore(text, settings.plan, settings.playTempo, settings.picking, patterns, ownHand);

const answer = async (question: HandOutQuestion): Promise<void> => {
  const { fonts, want, options, title, nowMs } = question;
  const typefaces = openTypefaces(fonts);
  const songs = question.songs.map((source) => ({
    walk: walkOf(source),
    notes: source.settings.notes,
  }));
  const book = bookOf(typefaces, songs, options, title);
  if (want === "pages") {
    const all = songs.map(({ walk, notes }) => walk.song.title + notes).join("");
    say({ kind: "pages", book, missing: typefaces.missing(all) });
    return;
  }
  const onPage = (done: number): void => say({ kind: "progress", share: done / book.pages.length });
  say({ kind: "pdf", bytes: await writePdf(book, fonts, new Date(nowMs), onPage) });
};

// Pages are set and written beside the screen; an answer that is no longer wanted is ended.
self.addEventListener("message", ({ data }: MessageEvent<HandOutQuestion>) => {
  answer(data).catch((error: unknown) => {
    say({ kind: "failed", reason: error instanceof Error ? error.message : String(error) });
  });
});
