// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { LaneLook, LOOK_MS } from "../../../src-renderer/parts/laneLook.svelte.ts";
import { HandClock } from "../state/handClock.ts";

const stage = () => {
  const clock = new HandClock();
  const look = new LaneLook(clock.later);
  const drawn: number[] = [];
  const detach = look.attach({
    draw: () => drawn.push(look.ahead),
    within: (ahead) => Math.min(5000, Math.max(-300, ahead)),
  });
  return { clock, look, drawn, detach };
};

describe("a look along the lanes", () => {
  test("goes as far as there is something to see", () => {
    const { look, drawn } = stage();
    look.by(1900);
    look.by(9000);
    look.by(-9900);
    expect(drawn).toEqual([1900, 5000, -300]);
    expect(look.away).toBe(true);
  });

  test("comes back by itself while the music plays, and not before it is let go", () => {
    const { clock, look } = stage();
    look.music(true);
    look.take();
    look.by(1900);
    clock.turn(10 * LOOK_MS);
    expect([look.ahead, look.held]).toEqual([1900, true]);
    look.letGo();
    clock.turn(LOOK_MS - 1);
    expect(look.away).toBe(true);
    clock.turn(1);
    expect([look.ahead, look.away]).toEqual([0, false]);
  });

  test("starts to wait anew with each touch", () => {
    const { clock, look } = stage();
    look.music(true);
    look.by(700);
    clock.turn(LOOK_MS - 100);
    look.by(700);
    clock.turn(LOOK_MS - 100);
    expect(look.ahead).toBe(1400);
  });

  test("rests while the music rests, and comes back after it has begun", () => {
    const { clock, look } = stage();
    look.by(700);
    clock.turn(10 * LOOK_MS);
    expect(look.ahead).toBe(700);
    look.music(true);
    clock.turn(LOOK_MS);
    expect(look.ahead).toBe(0);
  });

  test("is over at once when the player wants to be back", () => {
    const { look, drawn } = stage();
    look.by(700);
    look.backToNow();
    expect([look.away, drawn]).toEqual([false, [700, 0]]);
  });

  test("goes nowhere without lanes", () => {
    const { look, detach } = stage();
    detach();
    look.by(700);
    expect(look.ahead).toBe(0);
  });
});
