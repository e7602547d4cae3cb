import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { handMadeScore, roll } from "../../../e2e/sound/handMadeScore.ts";
import type { Playback } from "../../../src-renderer/sound/playback.ts";
import { Player } from "../../../src-renderer/state/player.svelte.ts";
import type { Score, Span } from "../../../src-shared/score/score.ts";
import { firstPreferences, type Preferences } from "../../../src-shared/settings.ts";
import { type Tick, tick } from "../../../src-shared/units.ts";

/** An engine without sound, whose position is put where a test wants it. */
class QuietEngine implements Playback {
  onEnded: (() => void) | null = null;
  onHeldBack: (() => void) | null = null;
  onRecovered: (() => void) | null = null;
  readonly asked: string[] = [];
  at = tick(0);
  countsInTo: Tick | null = null;
  refuses: string | null = null;
  #awake: (() => void) | null = null;
  /** Waking up takes until `awaken` is called. */
  sleepy = false;

  async wake(): Promise<void> {
    if (this.refuses) {
      throw new Error(this.refuses);
    }
    if (this.sleepy) {
      await new Promise<void>((resolve) => {
        this.#awake = resolve;
      });
    }
  }

  awaken(): void {
    this.#awake?.();
  }

  load(score: Score, tempo: number): void {
    this.asked.push(`load ${score.bars.length} bars at ${tempo}`);
  }

  play(from: Tick, countInBars: number): void {
    this.asked.push(`play ${from} after ${countInBars}`);
    this.at = from;
    this.countsInTo = countInBars > 0 ? from : null;
  }

  pause(): Tick {
    this.asked.push("pause");
    return this.at;
  }

  seek(to: Tick): void {
    this.asked.push(`seek ${to}`);
    this.at = to;
  }

  setTempo(tempo: number): void {
    this.asked.push(`tempo ${tempo}`);
  }

  setLoop(loop: Span | null): void {
    this.asked.push(loop ? `loop ${loop.start} to ${loop.end}` : "no loop");
  }

  setCountInEachRound(bars: number): void {
    this.asked.push(`${bars} before each round`);
  }

  setMix(mix: Preferences["mix"]): void {
    this.asked.push(`banjo ${mix.banjo.volume}`);
  }

  position(): Tick {
    return this.at;
  }

  dispose(): void {
    this.asked.push("dispose");
  }
}

/** The screen's frames, each drawn when a test says so. */
let frames = new Map<number, FrameRequestCallback>();
let nextFrame = 1;
const drawFrame = (): void => {
  const drawn = frames;
  frames = new Map();
  for (const callback of drawn.values()) {
    callback(performance.now());
  }
};

beforeEach(() => {
  frames = new Map();
  vi.stubGlobal("requestAnimationFrame", (callback: FrameRequestCallback): number => {
    nextFrame += 1;
    frames.set(nextFrame, callback);
    return nextFrame;
  });
  vi.stubGlobal("cancelAnimationFrame", (id: number): void => {
    frames.delete(id);
  });
});

afterEach(() => {
  vi.unstubAllGlobals();
});

const score = handMadeScore(4, roll(4, 7));
/** One placement for each of bars 2 and 3; bars 1 and 4 have none. */
const placements = [
  { start: tick(1920), length: tick(1920) },
  { start: tick(3840), length: tick(1920) },
];
const bar = (first: number, last: number): Span => ({
  start: tick(first * 1920),
  end: tick((last + 1) * 1920),
});

const made = (): { engine: QuietEngine; player: Player } => {
  const engine = new QuietEngine();
  const player = new Player(() => engine);
  player.load(score, placements);
  return { engine, player };
};

const heardAt = (engine: QuietEngine, at: number): void => {
  engine.at = tick(at);
  drawFrame();
};

describe("the player", () => {
  test("makes its engine at the first play, once, and tells it all that was set before", async () => {
    const engine = new QuietEngine();
    const make = vi.fn(() => Promise.resolve(engine));
    const player = new Player(make);
    player.load(score, placements);
    player.setTempo(90);
    player.setLoop(bar(1, 2));
    player.setCountInEachRound(1);
    player.setMix({
      ...firstPreferences.mix,
      banjo: { volume: 0.3, muted: false, solo: false, pan: 0 },
    });
    expect(make).not.toHaveBeenCalled();
    await player.playPause();
    await player.playPause();
    await player.playPause();
    expect(make).toHaveBeenCalledTimes(1);
    expect(engine.asked.slice(0, 5)).toEqual([
      "load 4 bars at 90",
      "loop 1920 to 5760",
      "1 before each round",
      "banjo 0.3",
      "play 1920 after 0",
    ]);
  });

  test("counts in, then plays: the bar and placement that come, the beats of the clicks", async () => {
    const { engine, player } = made();
    player.setCountIn(1);
    player.seek(tick(1920));
    await player.playPause();
    heardAt(engine, 0);
    expect([player.state, player.bar, player.beat, player.placement]).toEqual([
      "countingIn",
      1,
      0,
      0,
    ]);
    heardAt(engine, 1000);
    expect([player.state, player.bar, player.beat, player.placement]).toEqual([
      "countingIn",
      1,
      1,
      0,
    ]);
    engine.countsInTo = null;
    heardAt(engine, 1930);
    expect([player.state, player.bar, player.beat, player.placement]).toEqual(["playing", 1, 0, 0]);
    heardAt(engine, 3840 + 970);
    expect([player.state, player.bar, player.beat, player.placement]).toEqual(["playing", 2, 1, 1]);
    heardAt(engine, 5760);
    expect([player.bar, player.placement]).toEqual([3, -1]);
  });

  test("shows places below 0 in a count-in to the very start", async () => {
    const { engine, player } = made();
    player.setCountIn(2);
    await player.playPause();
    heardAt(engine, -2880);
    expect([player.now(), player.bar, player.beat]).toEqual([-2880, 0, 1]);
  });

  test("pauses where it is heard and goes on from there", async () => {
    const { engine, player } = made();
    await player.playPause();
    heardAt(engine, 2345);
    await player.playPause();
    expect([player.state, player.now(), frames.size]).toEqual(["paused", 2345, 0]);
    await player.playPause();
    expect(engine.asked.at(-1)).toBe("play 2345 after 0");
  });

  test("goes on from the start of the bar where it counts in, so that the clicks fit", async () => {
    const { engine, player } = made();
    player.setCountIn(1);
    player.seek(tick(2345));
    await player.playPause();
    expect(engine.asked.at(-1)).toBe("play 1920 after 1");
  });

  test("a pause in the count-in leaves it where the count-in leads", async () => {
    const { engine, player } = made();
    player.setCountIn(1);
    player.seek(tick(3840));
    await player.playPause();
    heardAt(engine, 2000);
    await player.playPause();
    expect([player.state, player.now(), player.bar]).toEqual(["paused", 3840, 2]);
  });

  test("stop goes back to the start, of the loop where there is one", async () => {
    const { engine, player } = made();
    await player.playPause();
    heardAt(engine, 5000);
    player.stop();
    expect([player.state, player.now()]).toEqual(["stopped", 0]);
    player.setLoop(bar(2, 2));
    player.stop();
    expect(player.now()).toBe(3840);
  });

  test("calls everyone back on each frame with the tick that is heard, and stops when asked", async () => {
    const { engine, player } = made();
    const seen: number[] = [];
    const unsubscribe = player.onFrame((at) => seen.push(at));
    await player.playPause();
    heardAt(engine, 100);
    heardAt(engine, 200);
    unsubscribe();
    heardAt(engine, 300);
    expect(seen).toEqual([100, 200]);
  });

  test("calls back once after a seek and after a new score while nothing sounds", () => {
    const { player } = made();
    const seen: number[] = [];
    player.onFrame((at) => seen.push(at));
    player.seek(tick(2400));
    player.load(score, placements);
    expect(seen).toEqual([2400, 2400]);
    expect([player.bar, player.beat, player.placement, frames.size]).toEqual([1, 0, 0, 0]);
  });

  test("seeks within the song only, and while it plays the sound goes along", async () => {
    const { engine, player } = made();
    player.seek(tick(99_999));
    expect(player.now()).toBe(7679);
    player.seek(tick(-5));
    expect(player.now()).toBe(0);
    await player.playPause();
    player.seek(tick(3000));
    expect(engine.asked.at(-1)).toBe("seek 3000");
  });

  test("a seek in the count-in counts in again to the new place", async () => {
    const { engine, player } = made();
    player.setCountIn(2);
    await player.playPause();
    player.seek(tick(4000));
    expect(engine.asked.at(-1)).toBe("play 3840 after 2");
    expect(player.state).toBe("countingIn");
  });

  test("steps from bar to bar; back goes first to the bar's own start once its first beat is over", () => {
    const { player } = made();
    const step = (from: number, by: number): number => {
      player.seek(tick(from));
      player.stepBar(by);
      return player.now();
    };
    expect([step(2000, 1), step(2000, -1), step(2880, -1), step(2880, -2)]).toEqual([
      3840, 0, 1920, 0,
    ]);
    expect([step(2880, 1), step(7000, 1), step(0, -1), step(0, 3)]).toEqual([3840, 5760, 0, 5760]);
  });

  test("a loop that is set elsewhere takes it to the loop's start, one around it leaves it", async () => {
    const { engine, player } = made();
    await player.playPause();
    heardAt(engine, 2500);
    player.setLoop(bar(1, 1));
    expect(engine.asked.at(-1)).toBe("loop 1920 to 3840");
    player.setLoop(bar(3, 3));
    expect(engine.asked.slice(-2)).toEqual(["loop 5760 to 7680", "seek 5760"]);
  });

  test("a tempo counts beats of the meter and reaches the engine at once", async () => {
    const { engine, player } = made();
    await player.playPause();
    player.setTempo(120);
    expect(player.quartersPerMinute).toBe(240);
    expect(engine.asked.at(-1)).toBe("tempo 120");
    player.load({ ...handMadeScore(3, []), meter: { beats: 6, unit: 8 } }, []);
    expect(player.quartersPerMinute).toBe(180);
  });

  test("a new score while it plays keeps the place; one without bars stops it", async () => {
    const { engine, player } = made();
    await player.playPause();
    heardAt(engine, 3000);
    player.load(handMadeScore(3, []), []);
    expect([player.state, player.now(), engine.asked.at(-1)]).toEqual([
      "playing",
      3000,
      "load 3 bars at 100",
    ]);
    player.load(handMadeScore(0, []), []);
    expect([player.state, player.now()]).toEqual(["stopped", 0]);
  });

  test("a shorter score while it rests puts it at the last bar", () => {
    const { player } = made();
    player.seek(tick(7000));
    player.load(handMadeScore(2, []), []);
    expect([player.now(), player.bar]).toEqual([1920, 1]);
  });

  test("does not play a score without bars", async () => {
    const engine = new QuietEngine();
    const player = new Player(() => engine);
    await player.playPause();
    expect([player.state, engine.asked.length]).toEqual(["stopped", 0]);
  });

  test("the end of the song stops it, ready to start again", async () => {
    const { engine, player } = made();
    await player.playPause();
    heardAt(engine, 7600);
    engine.onEnded?.();
    expect([player.state, player.now(), frames.size]).toEqual(["stopped", 0, 0]);
    await player.playPause();
    expect(engine.asked.at(-1)).toBe("play 0 after 0");
  });

  test("shows the last beat of the last bar when the end is heard", async () => {
    const { engine, player } = made();
    await player.playPause();
    heardAt(engine, 7680);
    expect([player.state, player.bar, player.beat]).toEqual(["playing", 3, 1]);
  });

  test("says in words why there is no sound, and plays when it is tried again", async () => {
    const { engine, player } = made();
    engine.refuses = "The browser holds the sound back.";
    await player.playPause();
    expect([player.state, player.problem]).toEqual([
      "stopped",
      "No sound. The browser holds the sound back. Press Play to try again.",
    ]);
    engine.refuses = null;
    await player.playPause();
    expect([player.state, player.problem]).toEqual(["playing", null]);
  });

  test("an engine that cannot be made is made again at the next try", async () => {
    const engine = new QuietEngine();
    const make = vi.fn<() => Promise<Playback>>();
    make
      .mockRejectedValueOnce(new Error("The sound could not be fetched."))
      .mockResolvedValue(engine);
    const player = new Player(make);
    player.load(score, placements);
    await player.playPause();
    expect(player.problem).toContain("could not be fetched");
    await player.playPause();
    expect([player.state, player.problem]).toEqual(["playing", null]);
  });

  test("a second press before the sound is awake takes the first one back", async () => {
    const { engine, player } = made();
    engine.sleepy = true;
    const first = player.playPause();
    await vi.waitFor(() => expect(engine.asked).toContain("no loop"));
    await player.playPause();
    engine.awaken();
    await first;
    expect([player.state, engine.asked.some((each) => each.startsWith("play"))]).toEqual([
      "stopped",
      false,
    ]);
  });

  test("sound that the system stops pauses it and is said", async () => {
    const { engine, player } = made();
    await player.playPause();
    heardAt(engine, 1234);
    engine.onHeldBack?.();
    expect([player.state, player.now()]).toEqual(["paused", 1234]);
    expect(player.problem).toBe("The system stopped the sound. Press Play to go on.");
  });

  test("sound that the system stopped and that goes on by itself is said, and plays on", async () => {
    const { engine, player } = made();
    await player.playPause();
    engine.onRecovered?.();
    expect(player.state).toBe("playing");
    expect(player.problem).toBe("The system stopped the sound for a moment. It goes on now.");
  });

  test("a count-in between rounds shows the bar that it leads to, and a pause in it stands there", async () => {
    const { engine, player } = made();
    player.setLoop(bar(2, 3));
    player.seek(tick(4000));
    await player.playPause();
    heardAt(engine, 7000);
    engine.countsInTo = tick(3840);
    heardAt(engine, 3840 - 960);
    expect([player.state, player.bar, player.beat]).toEqual(["countingIn", 2, 1]);
    engine.countsInTo = null;
    heardAt(engine, 3900);
    expect([player.state, player.bar, player.beat]).toEqual(["playing", 2, 0]);
    engine.countsInTo = tick(3840);
    heardAt(engine, 3000);
    await player.playPause();
    expect([player.state, player.now()]).toEqual(["paused", 3840]);
  });

  test("dispose stops the frames and lets the engine go", async () => {
    const { engine, player } = made();
    await player.playPause();
    player.dispose();
    expect([engine.asked.at(-1), frames.size]).toEqual(["dispose", 0]);
  });

  test("an engine that is made too late, after dispose, is let go at once", async () => {
    const engine = new QuietEngine();
    let deliver: (made: Playback) => void = () => undefined;
    const player = new Player(
      () =>
        new Promise<Playback>((resolve) => {
          deliver = resolve;
        }),
    );
    player.load(score, placements);
    const first = player.playPause();
    player.dispose();
    deliver(engine);
    await first;
    expect([player.state, engine.asked]).toEqual(["stopped", ["dispose"]]);
  });
});
