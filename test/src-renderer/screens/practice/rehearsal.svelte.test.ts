// @vitest-environment happy-dom
import { describe, expect, test, vi } from "vitest";
import { songToRehearse } from "../../../../src-renderer/screens/practice/drillWalks.ts";
import { Rehearsal } from "../../../../src-renderer/screens/practice/rehearsal.svelte.ts";
import { Player } from "../../../../src-renderer/state/player.svelte.ts";
import { LoggedHistory } from "../../../../src-renderer/state/practiceHistory.ts";
import { PracticeLog } from "../../../../src-renderer/state/practiceLog.svelte.ts";
import { chartToScore } from "../../../../src-shared/chartToScore.ts";
import type { Item, Mark } from "../../../../src-shared/practice/practice.ts";
import { secondsLeft, stepNow } from "../../../../src-shared/practice/session.ts";
import { newSongSettings } from "../../../../src-shared/settings.ts";
import { HandClock } from "../../state/handClock.ts";
import { MemoryHost } from "../../state/memoryHost.ts";
import { HandEngine } from "./handEngine.ts";

const DAY_MS = 86_400_000;
const CHART = "Title: Plover Gate\nKey: G\nTempo: 150\n| G | C | G | D | G | C | D | G |";

const stage = (chart = CHART) => {
  const engine = new HandEngine();
  const player = new Player(() => engine);
  const log = new PracticeLog(new MemoryHost().host);
  const history = new LoggedHistory(
    log,
    () => "Plover Gate",
    (atMs) => Math.floor(atMs / DAY_MS),
  );
  const clock = new HandClock();
  const walk = songToRehearse(chartToScore(chart, newSongSettings.plan, null));
  const rehearsal = new Rehearsal(() => ({ id: "plover-gate", walk }), player, history, clock);
  player.onFrame((at) => rehearsal.follow(at));
  /** The music is at this share of the drill. */
  const heardAt = (share: number): void => {
    const length = rehearsal.desk.walk?.timeline.length ?? 0;
    engine.at = Math.floor(share * length) as typeof engine.at;
    rehearsal.follow(engine.at);
  };
  /** Rounds played to their end, each marked late in it. */
  const playRounds = (...marks: readonly (Mark | null)[]): void => {
    heardAt(0);
    for (const mark of marks) {
      heardAt(0.4);
      heardAt(0.9);
      if (mark) rehearsal.mark(mark);
      heardAt(0);
    }
  };
  return { engine, player, history, clock, rehearsal, heardAt, playRounds };
};

/** Past the count-in, which this engine leaves out. */
const playing = async (rehearsal: Rehearsal, player: Player): Promise<void> => {
  await rehearsal.playPause();
  await vi.waitFor(() => expect(player.state).toBe("playing"));
};

const passage: Item = { kind: "passage", firstBar: 2, lastBar: 3 };

describe("a drill of the player's own choice", () => {
  test("begins with the bare slide of the hardest change, slowly", () => {
    const { rehearsal } = stage();
    const hardest = rehearsal.trouble[0]?.change;
    if (!hardest) throw new Error("nothing moves");
    rehearsal.practise(hardest);
    expect(rehearsal.now?.stage).toBe("slide");
    expect(rehearsal.desk.walk?.tempo).toBe(90);
    expect(rehearsal.desk.walk?.timeline.bars).toHaveLength(2);
  });

  test("goes up a step where the round after three clean ones begins, and not before", async () => {
    const { rehearsal, player, engine, playRounds, heardAt } = stage();
    rehearsal.practise(passage, "slow");
    await playing(rehearsal, player);
    playRounds("clean", "clean");
    expect(engine.tempo).toBe(75);
    heardAt(0.4);
    heardAt(0.9);
    rehearsal.mark("clean");
    expect(engine.tempo).toBe(75);
    heardAt(0);
    expect(engine.tempo).toBe(80);
    expect(rehearsal.desk.walk?.tempo).toBe(80);
  });

  test("never goes above its goal, whatever is marked", async () => {
    const { rehearsal, player, engine, playRounds } = stage();
    rehearsal.practise(passage, "tempo");
    await playing(rehearsal, player);
    playRounds(...Array.from({ length: 60 }, () => "clean" as const));
    expect(engine.tempo).toBe(150);
    expect(rehearsal.now?.ladder.done).toBe(true);
  });

  test("tells each round to the log, with tempo, mark and length", async () => {
    const { rehearsal, player, history, playRounds } = stage();
    rehearsal.practise(passage, "slow");
    await playing(rehearsal, player);
    playRounds("clean", "not-yet", null);
    rehearsal.leave();
    const rounds = history.roundsOf("plover-gate");
    expect(rounds.map(({ mark }) => mark)).toEqual(["clean", "not-yet", null]);
    // Two bars of four quarters at 75 a minute.
    expect(rounds.map(({ lasted, tempo, unit }) => [lasted, tempo, unit])).toEqual(
      Array.from({ length: 3 }, () => [6400, 75, 4]),
    );
  });

  test("takes a mark early in a round for the round before", async () => {
    const { rehearsal, player, history, playRounds, heardAt } = stage();
    rehearsal.practise(passage, "slow");
    await playing(rehearsal, player);
    playRounds(null);
    heardAt(0.1);
    rehearsal.mark("clean");
    expect(history.roundsOf("plover-gate").map(({ mark }) => mark)).toEqual(["clean"]);
  });

  test("takes no marks while nothing sounds, and a broken-off round is none", async () => {
    const { rehearsal, player, history, heardAt } = stage();
    rehearsal.practise(passage, "slow");
    rehearsal.mark("clean");
    expect(rehearsal.said).toBeNull();
    await playing(rehearsal, player);
    heardAt(0.3);
    heardAt(0.7);
    rehearsal.leave();
    expect(history.roundsOf("plover-gate")).toEqual([]);
  });

  test("of an exercise belongs to no song, and comes back a stage on", async () => {
    const { rehearsal, player, history, playRounds } = stage();
    const item: Item = { kind: "exercise", name: "pair G F 1 4" };
    rehearsal.practise(item);
    await playing(rehearsal, player);
    playRounds("clean");
    rehearsal.leave();
    expect(history.roundsOf("plover-gate")).toEqual([]);
    expect(history.roundsOf(null)).toHaveLength(1);
    rehearsal.practise(item);
    expect(rehearsal.now?.stage).toBe("slow");
  });
});

describe("a guided rehearsal", () => {
  test("counts time while it sounds, and none while it is paused", async () => {
    const { rehearsal, clock, player } = stage();
    await rehearsal.lead(10);
    await vi.waitFor(() => expect(player.state).toBe("playing"));
    const left = (): number => (rehearsal.session ? secondsLeft(rehearsal.session).all : -1);
    for (let second = 0; second < 20; second += 1) clock.turn(1000);
    expect(left()).toBeCloseTo(580, 6);
    await rehearsal.playPause();
    clock.turn(30_000);
    clock.turn(30_000);
    expect(left()).toBeCloseTo(580, 6);
    await rehearsal.playPause();
    await vi.waitFor(() => expect(player.state).toBe("playing"));
    clock.turn(1000);
    clock.turn(1000);
    expect(left()).toBeCloseTo(578, 6);
  });

  test("is silent in its rest, goes on by itself, and is over after ten minutes", async () => {
    const { rehearsal, clock, engine } = stage();
    await rehearsal.lead(10);
    const kinds: string[] = [];
    for (let second = 0; second < 600; second += 1) {
      const step = rehearsal.session && stepNow(rehearsal.session);
      if (!step) break;
      kinds.push(step.kind);
      await vi.waitFor(() => expect(engine.sounding).toBe(step.kind === "play"));
      clock.turn(1000);
    }
    expect(kinds.filter((kind) => kind === "rest")).toHaveLength(60);
    expect(kinds).toHaveLength(600);
    expect(rehearsal.session && stepNow(rehearsal.session)).toBeNull();
    expect(engine.sounding).toBe(false);
  });

  test("settles what was played before the next part begins", async () => {
    const { rehearsal, player, history, playRounds } = stage();
    await rehearsal.lead(10);
    await vi.waitFor(() => expect(player.state).toBe("playing"));
    const first = rehearsal.now?.item;
    playRounds(null);
    await rehearsal.nextPart();
    expect(history.roundsOf("plover-gate").map(({ item }) => item)).toEqual([first]);
    expect(rehearsal.now?.item).not.toEqual(first);
  });

  test("of a song in which nothing is held does not begin", async () => {
    const { rehearsal } = stage("Title: Hush\n| N.C. | N.C. |");
    await rehearsal.lead(10);
    expect(rehearsal.session).toBeNull();
    expect(rehearsal.trouble).toEqual([]);
  });
});
