import type { Walk } from "../../src-shared/chartToScore.ts";
import type { Host, Problem, StoredSong } from "../../src-shared/host.ts";
import type { Pattern } from "../../src-shared/roll/pattern.ts";
import type { Hand } from "../../src-shared/route/movement.ts";
import { pinsAfterEdit, playedChart } from "../../src-shared/route/pinsAfterEdit.ts";
import type { PlanSettings, SongSettings } from "../../src-shared/settings.ts";
import { Autosave, type Saving } from "./autosave.svelte.ts";
import { inKey, KeptSong, versionOf } from "./keptSong.ts";
import { type Later, later } from "./later.ts";
import {
  type ChangeKind,
  emptyHistory,
  kindOfEdit,
  record,
  type SongHistory,
  type SongVersion,
  stepBack,
  stepForward,
} from "./songHistory.ts";
import { SongWalk } from "./songWalk.svelte.ts";
import { WalkedText } from "./walkedText.svelte.ts";

/** What a song needs from outside to tell time; tests bring their own. */
export type SongClock = { readonly later: Later; readonly nowMs: () => number };

/** The clock on the wall. */
export const wallClock: SongClock = { later, nowMs: () => Date.now() };

/** The song on the stand: its text and settings, all that follows from them, undo, and saving. */
export class OpenSong {
  /** The songbook's id for it; another one once its file is called by a new title. */
  id: string;
  readonly text: string;
  readonly settings: SongSettings;
  readonly walk: Walk;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** The key of a jam evening, in the place of the song's own; null outside one. Never kept with it. */
  eveningKey: string | null = $state.raw(null);
  #version: SongVersion;
  readonly #walked: WalkedText;
  #history: SongHistory = $state.raw(emptyHistory);
  /** The player's own patterns, which the song's picking names. */
  readonly patterns: readonly Pattern[];
  /** The hand that the player has accepted as theirs, or null. */
  readonly ownHand: Hand | null;
  readonly #kept: KeptSong;
  readonly #autosave: Autosave<SongVersion>;
  readonly #clock: SongClock;

  /** `ownPatterns` and `ownHand` are asked again whenever what they give changes. */
  constructor(
    host: Host,
    stored: StoredSong,
    clock: SongClock = wallClock,
    ownPatterns: () => readonly Pattern[] = () => [],
    ownHand: () => Hand | null = () => null,
  ) {
    this.id = $state(stored.id);
    this.#clock = clock;
    this.#version = $state.raw(versionOf(stored));
    this.#walked = new WalkedText(this.#version.text, clock.later);
    this.text = $derived(this.#version.text);
    this.settings = $derived(inKey(this.#version.settings, this.eveningKey));
    this.patterns = $derived(ownPatterns());
    this.ownHand = $derived(ownHand());
    const walked = new SongWalk({
      text: () => this.#walked.now,
      settings: () => this.settings,
      patterns: () => this.patterns,
      ownHand: () => this.ownHand,
    });
    this.walk = $derived(walked.now);
    this.canUndo = $derived(this.#history.past.length > 0);
    this.canRedo = $derived(this.#history.future.length > 0);
    this.#kept = new KeptSong(host, stored);
    this.#autosave = new Autosave((version) => this.#kept.write(version), clock.later);
  }

  /** The settings as they are kept, without what holds for this evening alone. */
  get ownSettings(): SongSettings {
    return this.#version.settings;
  }

  /** Its file has another name from now on. */
  movedTo(id: string): void {
    this.#kept.movedTo(id);
    this.id = id;
  }

  get saving(): Saving {
    return this.#autosave.state;
  }

  get problem(): Problem | null {
    return this.#autosave.problem;
  }

  /** Why saving again would not help: the song was changed elsewhere, or is gone; else null. */
  get conflict(): Problem | null {
    const { problem } = this;
    const inTheWay = problem?.code === "changed" || problem?.code === "not-found";
    return inTheWay ? problem : null;
  }

  edit(text: string): void {
    if (text === this.#version.text) return;
    const settings = this.#settingsFor(text);
    this.#become({ text, settings }, kindOfEdit(this.#version.text, text));
  }

  change(part: Partial<Omit<SongSettings, "version">>): void {
    this.#change(part, `settings ${Object.keys(part).toSorted().join(" ")}`);
  }

  /** Each pin is a step of its own, however soon it follows another. */
  changePlan(part: Partial<PlanSettings>): void {
    const plan = { ...this.#version.settings.plan, ...part };
    this.#change({ plan }, part.pins ? "other" : "settings plan");
  }

  undo(): void {
    this.#stepTo(stepBack(this.#history, this.#version));
  }

  redo(): void {
    this.#stepTo(stepForward(this.#history, this.#version));
  }

  /** Writes at once what has not been written; `saving` then says how it went. */
  save(): Promise<void> {
    return this.#autosave.flush();
  }

  /** Takes the song as it is kept now; one step of undo brings back what was here. */
  async takeOther(): Promise<Problem | null> {
    await this.#autosave.callOff();
    const answer = await this.#kept.readAgain();
    if (!answer.ok) {
      this.#autosave.offer(this.#version);
      return answer.problem;
    }
    this.#autosave.abandon();
    this.#history = record(this.#history, this.#version, "other", this.#clock.nowMs());
    this.#version = versionOf(answer.value);
    this.#walked.follow(this.#version.text, false);
    return null;
  }

  /** An earlier version's chart, route and picking, as one step of undo; how it is practised stays. */
  bringBack({ text, settings: { plan, picking } }: SongVersion): void {
    const next = { text, settings: { ...this.#version.settings, plan, picking } };
    if (JSON.stringify(next) !== JSON.stringify(this.#version)) this.#become(next, "other");
  }

  /** The song has been taken out of the songbook: nothing is written any more. */
  abandon(): void {
    this.#autosave.abandon();
  }

  #change(part: Partial<Omit<SongSettings, "version">>, kind: ChangeKind): void {
    const settings = { ...this.#version.settings, ...part };
    if (JSON.stringify(settings) === JSON.stringify(this.#version.settings)) return;
    this.#become({ ...this.#version, settings }, kind);
  }

  /** The settings as they go with another text: what is said of chords goes with their bars. */
  #settingsFor(text: string): SongSettings {
    const { settings } = this.#version;
    const { plan, picking } = settings;
    if (plan.pins.length === 0 && picking.stays.length === 0) return settings;
    const before = playedChart(this.text, plan.playKey);
    const after = playedChart(text, plan.playKey);
    const pins = pinsAfterEdit(plan.pins, before, after);
    const stays = pinsAfterEdit(picking.stays, before, after);
    if (pins === plan.pins && stays === picking.stays) return settings;
    return { ...settings, plan: { ...plan, pins }, picking: { ...picking, stays } };
  }

  #become(version: SongVersion, kind: ChangeKind): void {
    this.#history = record(this.#history, this.#version, kind, this.#clock.nowMs());
    this.#version = version;
    this.#walked.follow(version.text, kind === "typing" || kind === "erasing");
    this.#autosave.offer(version);
  }

  #stepTo(step: { readonly version: SongVersion; readonly history: SongHistory } | null): void {
    if (!step) return;
    this.#history = step.history;
    this.#version = step.version;
    this.#walked.follow(step.version.text, false);
    this.#autosave.offer(step.version);
  }
}
