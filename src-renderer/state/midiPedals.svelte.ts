import {
  type ControlValues,
  type MidiTrigger,
  readMidi,
} from "../../src-shared/control/midiPress.ts";
import { words } from "../../src-shared/wordTable.ts";

/** What is used of a MIDI input of the Web MIDI API. */
export type MidiSource = EventTarget & {
  readonly id: string;
  readonly name: string | null;
  readonly state: string;
};

/** What is used of the access to all of them. */
export type MidiSources = EventTarget & {
  readonly inputs: { forEach(callback: (input: MidiSource) => void): void };
};

/** Asks for access without system exclusive messages; null where there is no Web MIDI. */
export type AskForMidi = (() => Promise<MidiSources>) | null;

/** Off, asked for, listening, not there at all, or refused by player or system. */
export type MidiState = "off" | "asking" | "listening" | "absent" | "refused";

/** Hears the switches of every MIDI controller that is plugged in, also later. */
export class MidiPedals {
  state: MidiState = $state("off");
  /** The controllers that are plugged in. */
  names: readonly string[] = $state.raw([]);
  /** Why it is refused, as the browser says it. */
  reason: string = $state("");
  readonly #ask: AskForMidi;
  readonly #callbacks = new Set<(trigger: MidiTrigger) => void>();
  readonly #values = new Map<string, ControlValues>();
  #sources: MidiSources | null = null;

  constructor(ask: AskForMidi) {
    this.#ask = ask;
  }

  /** Calls back on each press; the answer ends that. */
  onPress(callback: (trigger: MidiTrigger) => void): () => void {
    this.#callbacks.add(callback);
    return () => {
      this.#callbacks.delete(callback);
    };
  }

  async listen(): Promise<void> {
    if (this.state === "asking" || this.state === "listening") return;
    if (!this.#ask) {
      this.state = "absent";
      return;
    }
    this.state = "asking";
    try {
      this.#sources = await this.#ask();
    } catch (thrown) {
      this.state = "refused";
      this.reason = thrown instanceof Error ? thrown.message : String(thrown);
      return;
    }
    this.state = "listening";
    this.#sources.addEventListener("statechange", this.#attend);
    this.#attend();
  }

  stop(): void {
    this.#sources?.removeEventListener("statechange", this.#attend);
    this.#sources?.inputs.forEach((input) => {
      input.removeEventListener("midimessage", this.#hear);
    });
    this.#sources = null;
    this.names = [];
    this.state = "off";
  }

  /** Listens to all that are there; to add the same listener twice changes nothing. */
  readonly #attend = (): void => {
    const names: string[] = [];
    this.#sources?.inputs.forEach((input) => {
      if (input.state !== "connected") return;
      input.addEventListener("midimessage", this.#hear);
      names.push(input.name ?? words.keys.midiController);
    });
    this.names = names;
  };

  readonly #hear = (event: Event): void => {
    const source = event.target as MidiSource;
    const { data } = event as Event & Pick<MIDIMessageEvent, "data">;
    const { pressed, values } = readMidi(data ?? [], this.#values.get(source.id) ?? new Map());
    this.#values.set(source.id, values);
    if (pressed) for (const callback of this.#callbacks) callback(pressed);
  };
}
