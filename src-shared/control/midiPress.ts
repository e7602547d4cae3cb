import type { MidiKind, Trigger } from "./trigger.ts";

// Source: MIDI 1.0 Detailed Specification, channel voice messages: status byte 0x8n to 0xEn with the
// channel in its low four bits, data bytes below 0x80; a Note On of velocity 0 is a Note Off;
// switch controllers are off from 0 to 63 and on from 64 to 127.

/** A trigger of a MIDI controller. */
export type MidiTrigger = Trigger & { readonly kind: MidiKind };

/** The values that controllers had last, by channel and number; starts empty. */
export type ControlValues = ReadonlyMap<string, number>;

/** What a message comes to: a press or nothing, and the values to go on with. */
export type MidiReading = {
  readonly pressed: MidiTrigger | null;
  readonly values: ControlValues;
};

const ON = 64;

/**
 * Reads one MIDI message. A press is a note on, a program change, or a control change that comes on:
 * from below 64 to 64 or more, or a second time with the same value, since some switches never send
 * their release. A pedal that is being moved (64, 70, 81) is pressed once. Anything else, cut-off and
 * system messages too, is no press.
 * @example readMidi([0x90, 60, 100], new Map()).pressed // => { kind: "note", channel: 1, number: 60 }
 * @example readMidi([0x90, 60, 0], new Map()).pressed // => null
 * @example readMidi([0xbf, 64, 127], new Map()).pressed // => { kind: "control", channel: 16, number: 64 }
 * @example readMidi([0xc2, 5], new Map()).pressed // => { kind: "program", channel: 3, number: 5 }
 */
export const readMidi = (bytes: ArrayLike<number>, values: ControlValues): MidiReading => {
  const nothing = { pressed: null, values };
  const { 0: status = 0, 1: number = 0x80, 2: value = 0x80 } = bytes;
  if (status < 0x80 || number > 0x7f) return nothing;
  const channel = (status & 0x0f) + 1;
  const message = status & 0xf0;
  if (message === 0xc0) return { pressed: { kind: "program", channel, number }, values };
  if (value > 0x7f) return nothing;
  if (message === 0x90 && value > 0) {
    return { pressed: { kind: "note", channel, number }, values };
  }
  if (message !== 0xb0) return nothing;
  const place = `${channel} ${number}`;
  const before = values.get(place) ?? 0;
  const comesOn = value >= ON && (before < ON || before === value);
  return {
    pressed: comesOn ? { kind: "control", channel, number } : null,
    values: new Map([...values, [place, value]]),
  };
};
