// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { MidiPedals } from "../../../src-renderer/state/midiPedals.svelte.ts";
import type { MidiTrigger } from "../../../src-shared/control/midiPress.ts";

/** An input as the Web MIDI API has them. */
class Input extends EventTarget {
  readonly id: string;
  readonly name: string | null;
  state = "connected";

  constructor(id: string, name: string | null) {
    super();
    this.id = id;
    this.name = name;
  }

  send(...bytes: readonly number[]): void {
    this.dispatchEvent(Object.assign(new Event("midimessage"), { data: Uint8Array.from(bytes) }));
  }
}

class Access extends EventTarget {
  readonly inputs = new Map<string, Input>();

  plug(input: Input): void {
    this.inputs.set(input.id, input);
    this.dispatchEvent(new Event("statechange"));
  }
}

const plugged = (...inputs: readonly Input[]) => {
  const access = new Access();
  for (const input of inputs) access.plug(input);
  const heard: MidiTrigger[] = [];
  const pedals = new MidiPedals(() => Promise.resolve(access));
  pedals.onPress((trigger) => heard.push(trigger));
  return { access, pedals, heard };
};
const note = (number: number) => ({ kind: "note", channel: 1, number });

test("nothing is asked for before the player wants it", () => {
  const { pedals, heard } = plugged(new Input("a", "Board"));
  expect([pedals.state, heard]).toEqual(["off", []]);
});

test("every controller that is plugged in is heard, one that comes later too, each once", async () => {
  const [board, late] = [new Input("a", "Board"), new Input("b", null)];
  const { access, pedals, heard } = plugged(board);
  await pedals.listen();
  await pedals.listen();
  expect([pedals.state, pedals.names]).toEqual(["listening", ["Board"]]);
  access.plug(late);
  expect(pedals.names).toEqual(["Board", "MIDI controller"]);
  board.send(0x90, 36, 90);
  late.send(0x90, 37, 90);
  expect(heard).toEqual([note(36), note(37)]);
});

test("two controllers that use one number do not get in each other's way", async () => {
  const [left, right] = [new Input("a", "Left"), new Input("b", "Right")];
  const { pedals, heard } = plugged(left, right);
  await pedals.listen();
  left.send(0xb0, 64, 127);
  right.send(0xb0, 64, 100);
  expect(heard).toHaveLength(2);
});

test("a controller that is pulled out is no longer named", async () => {
  const board = new Input("a", "Board");
  const { access, pedals } = plugged(board);
  await pedals.listen();
  board.state = "disconnected";
  access.dispatchEvent(new Event("statechange"));
  expect(pedals.names).toEqual([]);
});

test("switched off, nothing is heard, and it can be switched on again", async () => {
  const board = new Input("a", "Board");
  const { pedals, heard } = plugged(board);
  await pedals.listen();
  pedals.stop();
  board.send(0x90, 36, 90);
  expect([pedals.state, heard]).toEqual(["off", []]);
  await pedals.listen();
  board.send(0x90, 36, 90);
  expect(heard).toEqual([note(36)]);
});

test("who has stopped listening hears nothing", async () => {
  const board = new Input("a", "Board");
  const { pedals } = plugged(board);
  const heard: MidiTrigger[] = [];
  const stop = pedals.onPress((trigger) => heard.push(trigger));
  await pedals.listen();
  stop();
  board.send(0xc0, 1);
  expect(heard).toEqual([]);
});

test("a browser without Web MIDI, and one that refuses it, say so", async () => {
  const without = new MidiPedals(null);
  await without.listen();
  expect(without.state).toBe("absent");
  const refused = new MidiPedals(() => Promise.reject(new Error("Permission denied")));
  await refused.listen();
  expect([refused.state, refused.reason]).toEqual(["refused", "Permission denied"]);
});
