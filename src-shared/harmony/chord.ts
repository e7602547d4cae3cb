/** The chord qualities that Shortslide has voicings for, by the suffix that the trade writes. */
export type Quality =
  | ""
  | "m"
  | "7"
  | "m7"
  | "maj7"
  | "6"
  | "dim"
  | "aug"
  | "sus2"
  | "sus4"
  | "m7b5"
  | "dim7";

/** What a tone is within its chord. A sus chord's 2 or 4 stands where the third would. */
export type ToneRole = "root" | "third" | "fifth" | "seventh";

/** One tone of a chord. */
export type ChordTone = {
  readonly role: ToneRole;
  /** Semitones above the root, 0 to 11. */
  readonly semitones: number;
  /** Pitch class, 0 (C) to 11 (B). */
  readonly pitchClass: number;
};

/** A chord as it sounds. */
export type Chord = {
  /** As the trade writes it: root, quality, and "/bass" where the bass is another tone. */
  readonly name: string;
  /** Note name of the root: "Bb". */
  readonly root: string;
  readonly quality: Quality;
  /** Root first, then third, fifth, and seventh or sixth. */
  readonly tones: readonly ChordTone[];
  /** Note name of the bass where a slash chord names one, else null. */
  readonly bass: string | null;
  /** The larger chord that this one stands in for, as written ("C9" for C7); null for itself. */
  readonly standsFor: string | null;
};

/** A chord as a chart writes it: the larger chord that it stands in for, where it does. */
export const chordName = (chord: Pick<Chord, "name" | "standsFor">): string =>
  chord.standsFor ?? chord.name;
