import * as v from "valibot";

/** What a foot controller sends when it is pressed. */
export type MidiKind = "note" | "control" | "program";

/** Something to press: a key (or a pedal that sends keys), or a switch of a MIDI controller. */
export type Trigger =
  | {
      readonly kind: "key";
      /** As a key press names it, letters small: " ", "l", "PageDown". */
      readonly key: string;
    }
  | {
      readonly kind: MidiKind;
      /** 1 to 16. */
      readonly channel: number;
      /** 0 to 127. */
      readonly number: number;
    };

/** Whether two triggers are the same. */
export const sameTrigger = (one: Trigger, other: Trigger): boolean =>
  one.kind === "key"
    ? other.kind === "key" && other.key === one.key
    : other.kind === one.kind && other.channel === one.channel && other.number === one.number;

const whole = (low: number, high: number): v.GenericSchema<unknown, number> =>
  v.pipe(v.number(), v.integer(), v.minValue(low), v.maxValue(high));

/** Checks a trigger as it comes from disk or over the wire. */
export const triggerSchema: v.GenericSchema<unknown, Trigger> = v.variant("kind", [
  v.object({ kind: v.literal("key"), key: v.pipe(v.string(), v.minLength(1), v.maxLength(24)) }),
  v.object({
    kind: v.picklist(["note", "control", "program"]),
    channel: whole(1, 16),
    number: whole(0, 127),
  }),
]);
