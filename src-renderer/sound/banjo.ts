import type { PickFinger } from "../../src-shared/roll/pattern.ts";
import type { Note } from "../../src-shared/score/score.ts";
import { seconds } from "../../src-shared/units.ts";
import { decibels } from "./decibels.ts";
import { midiToHz } from "./midiToHz.ts";
import { pluckedString, type Timbre } from "./pluckedString.ts";
import type { Made } from "./sounder.ts";
import { banjoTimbre } from "./timbreTable.ts";

/** A string that the left hand has already let go of answers the pick more quietly. From memory. */
const LET_GO_LEVEL = 0.6;
const ACCENT_LEVEL = decibels(3);
/** An accent is a quicker pick, and so brighter. From memory. */
const ACCENT_PICK = 0.55;
/** Where each finger picks, as a share of the string from the bridge: the thumb farthest. From memory. */
const PICKED_AT: Readonly<Record<PickFinger, number>> = { T: 0.16, I: 0.13, M: 0.11 };

const timbreOf = ({ finger, accent }: Note): Timbre => ({
  ...banjoTimbre,
  pickedAt: PICKED_AT[finger],
  pick: seconds(banjoTimbre.pick * (accent ? ACCENT_PICK : 1)),
});

/** Five strings: picking one again damps what it sounded before. */
export const banjoStroke = (note: Note): Made => ({
  line: note.string,
  sounds: [
    {
      recording: {
        name: `${note.midi} ${note.finger}${note.accent ? "!" : ""}`,
        make: (sampleRate) => pluckedString(midiToHz(note.midi), sampleRate, timbreOf(note)),
      },
      after: seconds(0),
      level: (note.letGo ? LET_GO_LEVEL : 1) * (note.accent ? ACCENT_LEVEL : 1),
      soft: note.slideInto,
    },
  ],
});
