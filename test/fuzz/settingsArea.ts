import assert from "node:assert/strict";
import fc from "fast-check";
import * as v from "valibot";
import { chartToScore, otherRoutes, whyHere, withFeel } from "../../src-shared/chartToScore.ts";
import { writeMidi } from "../../src-shared/exchange/writeMidi.ts";
import { writeMusicXml } from "../../src-shared/exchange/writeMusicXml.ts";
import { writeTablature } from "../../src-shared/exchange/writeTablature.ts";
import { perform } from "../../src-shared/score/perform.ts";
import { withSilentBars } from "../../src-shared/score/silentBars.ts";
import {
  newSongSettings,
  type SongSettings,
  songSettingsSchema,
  wholeNeckPlan,
} from "../../src-shared/settings.ts";
import { shapeWords } from "../../src-shared/wording/sayShape.ts";
import { type Area, makeArea } from "./area.ts";
import { checkNotes, checkScore } from "./checks.ts";
import { jsonNear } from "./nearJson.ts";

const CHARTS: readonly string[] = [
  "| G | C D | G . . D7 |\n",
  "Key: Bb\nTime: 3/4\nCapo: 2\n[A]\n|: Bb | Eb |[1 F7 :|[2 Bb ||\n[B]\n| Gm | Cm7 | F F7 | Bb |\nForm: A B A\n",
  "Key: Am  Time: 6/8  Tuning: double C\n| 1 57 | 4 | b7 . 5 . . 1 | N.C. |\n",
  "Time: 2/4\nTuning: C9 C9 C9 C9 C9\n| G | Caug |\n",
  "",
];

const goodSettings: readonly SongSettings[] = [
  newSongSettings,
  {
    ...newSongSettings,
    plan: {
      ...wholeNeckPlan,
      playKey: "Eb",
      aim: "steady",
      strings: "4-3-2-1",
      perChord: 2,
      alike: true,
      goesRound: true,
      pins: [
        { kind: "hold", bar: 0, eighth: 0, time: null, chord: "G", frets: [null, null, 4, 3, 3] },
        { kind: "avoid", bar: 1, eighth: 0, time: 0, chord: "C", frets: [5, 5, 5, 5, null] },
      ],
    },
    picking: {
      song: { style: "vamp", density: "beats" },
      sections: [{ label: "A", manner: { style: "strum", density: "full" }, sung: true }],
      stays: [
        {
          bar: 1,
          eighth: 4,
          time: null,
          chord: "D",
          manner: { style: "alternating-thumb", density: "bars" },
        },
      ],
      fifth: "always",
    },
    feel: { bounce: 1, human: 1, dynamics: true, walkUps: true, fills: true },
    practice: { mix: "bass-and-click", silentBars: { play: 2, rest: 1 }, countInEachRound: true },
    playTempo: 96.5,
    countInBars: 2,
    loop: { firstBar: 1, lastBar: 2 },
  },
];

const anyCase = fc.record({
  chart: fc.constantFrom(...CHARTS),
  settings: jsonNear(fc.constantFrom(...goodSettings)).map((value) => JSON.stringify(value)),
});

/** A song's settings as a file has them: refused in words, or the song is planned and played. */
export const settingsArea: Area = makeArea("settings", anyCase, ({ chart, settings }) => {
  const read = v.safeParse(songSettingsSchema, JSON.parse(settings));
  if (!read.success) {
    assert.match(read.issues[0].message, /^\S/);
    return;
  }
  const { plan, playTempo, picking, feel, practice } = read.output;
  assert.deepEqual(
    v.parse(songSettingsSchema, JSON.parse(JSON.stringify(read.output))),
    JSON.parse(JSON.stringify(read.output)),
  );
  const walk = withFeel(chartToScore(chart, plan, playTempo, picking), feel);
  checkNotes(chart, walk.notes, walk.slots.length);
  checkScore(walk);
  assert.ok(otherRoutes(walk, 2).length <= 2);
  if (walk.slots.length > 0) {
    whyHere(walk, 0);
  }
  const heard = perform(walk.score, { feel, practice });
  if (practice.silentBars) {
    withSilentBars(heard, practice.silentBars, 0);
  }
  assert.ok(writeMidi(walk).length > 0);
  assert.ok(writeMusicXml(walk, { notation: true }).length > 0);
  assert.match(
    writeTablature(walk, ({ voicing }) => shapeWords(voicing, walk.neck.tuning).says),
    /\S/,
  );
});
