import fc from "fast-check";
import { strToU8 } from "fflate";
import MIDIFile from "midifile";
import { expect, test } from "vitest";
import { writeChart } from "../../../src-shared/chart/writeChart.ts";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { playedOut } from "../../../src-shared/exchange/playedOut.ts";
import { readMusicXml } from "../../../src-shared/exchange/readMusicXml.ts";
import { writeMidi } from "../../../src-shared/exchange/writeMidi.ts";
import { writeMusicXml } from "../../../src-shared/exchange/writeMusicXml.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";
import { anySong } from "../../laws/anyChart.ts";

const NOTE_ON = 0x9;
const MOST_BARS = 24;

test("fifty songs of any kind come back from MusicXML bar by bar, and from MIDI note by note", () => {
  let [songs, notes] = [0, 0];
  fc.assert(
    fc.property(anySong, (song) => {
      const walk = chartToScore(writeChart(song), wholeNeckPlan, null);
      fc.pre(walk.timeline.bars.length > 0 && walk.timeline.bars.length <= MOST_BARS);
      // A file without a chord symbol is no song; a silent one has none to come back from.
      fc.pre(walk.timeline.stays.some(({ chord }) => chord !== null));
      const found = readMusicXml(strToU8(writeMusicXml(walk, { notation: true })));
      const tune = found.ok ? found.tunes[0] : found;
      const played = { ...playedOut(walk.song, walk.timeline), tempo: walk.tempo };
      expect(tune?.ok ? tune.chart : tune?.says).toBe(writeChart(played));

      // midifile shares no code with the writer.
      const file = new MIDIFile(writeMidi(walk), true);
      const struck = Array.from({ length: file.header.getTracksCount() }, (_, track) => {
        let at = 0;
        return file.getTrackEvents(track).flatMap((event) => {
          at += event.delta;
          const strikes = event.type !== 0xff && event.subtype === NOTE_ON;
          return strikes && (event.channel ?? 9) < 5
            ? [`${at} ${event.param1} ${event.channel}`]
            : [];
        });
      }).flat();
      expect(struck.toSorted()).toEqual(
        walk.score.notes.map((note) => `${note.tick} ${note.midi} ${note.string - 1}`).toSorted(),
      );
      songs += 1;
      notes += struck.length;
    }),
    { numRuns: 50 },
  );
  expect(songs).toBeGreaterThanOrEqual(50);
  expect(notes).toBeGreaterThan(1000);
}, 300_000);
