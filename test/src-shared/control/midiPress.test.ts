import { describe, expect, test } from "vitest";
import { type ControlValues, readMidi } from "../../../src-shared/control/midiPress.ts";

// Expected values: MIDI 1.0 Detailed Specification, table of channel voice messages.

const pressesOf = (messages: readonly (readonly number[])[]) => {
  let values: ControlValues = new Map();
  return messages.map((bytes) => {
    const reading = readMidi(bytes, values);
    values = reading.values;
    return reading.pressed;
  });
};

describe("a MIDI message", () => {
  test.each([0, 1, 9, 15])("tells its channel from its low four bits: %i", (low) => {
    expect(readMidi([0x90 + low, 36, 1], new Map()).pressed).toEqual({
      kind: "note",
      channel: low + 1,
      number: 36,
    });
  });

  test("is no press when it ends a note, by status or by velocity 0", () => {
    expect(
      pressesOf([
        [0x80, 60, 64],
        [0x90, 60, 0],
      ]),
    ).toEqual([null, null]);
  });

  test.each([
    ["aftertouch", [0xa0, 60, 90]],
    ["channel pressure", [0xd0, 90]],
    ["pitch bend", [0xe0, 0, 64]],
    ["a clock tick", [0xf8]],
    ["active sensing", [0xfe]],
    ["a system exclusive", [0xf0, 0x7e, 0x7f, 0x06, 0x01, 0xf7]],
    ["nothing at all", []],
    ["a note cut off", [0x90, 60]],
    ["data without a status", [60, 100, 0]],
    ["a data byte out of range", [0x90, 200, 100]],
  ])("is no press when it is %s", (_, bytes) => {
    expect(readMidi(bytes, new Map()).pressed).toBeNull();
  });

  test("is a press for every program that is chosen, again and again", () => {
    const program = { kind: "program", channel: 1, number: 3 };
    expect(
      pressesOf([
        [0xc0, 3],
        [0xc0, 3],
      ]),
    ).toEqual([program, program]);
  });
});

describe("a controller", () => {
  const pedal = { kind: "control", channel: 1, number: 64 };
  const at = (value: number) => [0xb0, 64, value];

  test("is off up to 63 and on from 64", () => {
    expect(pressesOf([at(63), at(64)])).toEqual([null, pedal]);
  });

  test("is pressed once on its way down and up", () => {
    const sweep = [10, 40, 64, 81, 127, 100, 70, 30].map(at);
    expect(pressesOf(sweep)).toEqual([null, null, pedal, null, null, null, null, null]);
  });

  test("is pressed each time it comes on", () => {
    expect(pressesOf([at(127), at(0), at(127)])).toEqual([pedal, null, pedal]);
  });

  test("is pressed each time it says the same where it never lets go", () => {
    expect(pressesOf([at(127), at(127)])).toEqual([pedal, pedal]);
  });

  test("is told apart from another number and another channel", () => {
    expect(pressesOf([at(127), [0xb0, 65, 127], [0xb1, 64, 127]])).toEqual([
      pedal,
      { ...pedal, number: 65 },
      { ...pedal, channel: 2 },
    ]);
  });
});
