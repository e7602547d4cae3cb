/** The parts of midifile 2.0.0 and midievents 2.0.0 that tests read with; they bring no types. */
declare module "midifile" {
  type MidiFileEvent = {
    readonly delta: number;
    readonly type: number;
    readonly subtype: number;
    readonly channel?: number;
    readonly param1?: number;
    readonly param2?: number;
    readonly data?: readonly number[];
    readonly tempo?: number;
    readonly key?: number;
    readonly scale?: number;
  };
  class MIDIFile {
    constructor(bytes: Uint8Array | ArrayBuffer, strict?: boolean);
    readonly header: {
      getFormat(): number;
      getTracksCount(): number;
      getTicksPerBeat(): number;
    };
    getTrackEvents(track: number): readonly MidiFileEvent[];
  }

  export = MIDIFile;
}
