/** A key: its tonic as a note name ("Bb", "F#") and its mode. */
export type Key = {
  readonly tonic: string;
  readonly mode: "major" | "minor";
};
