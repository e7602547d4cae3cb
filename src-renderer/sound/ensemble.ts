import { countIn } from "../../src-shared/score/countIn.ts";
import type { Hit, Note, Score } from "../../src-shared/score/score.ts";
import { banjoStroke } from "./banjo.ts";
import { bassStroke } from "./bass.ts";
import { chopStroke } from "./chop.ts";
import { clickStroke } from "./click.ts";
import { guitarStroke } from "./guitar.ts";
import { Mixer } from "./mixer.ts";
import type { Band } from "./scheduler.ts";
import { Sounder } from "./sounder.ts";

/** The whole band and its mixer on one audio context, live or offline. */
export class Ensemble {
  readonly mixer: Mixer;
  readonly band: Band;
  readonly #sounders: readonly { readonly voices: number; dispose(): void }[];

  constructor(context: BaseAudioContext, output: AudioNode) {
    const mixer = new Mixer(context, output);
    const banjo = new Sounder<Note>(context, mixer.input("banjo"), banjoStroke);
    const bass = new Sounder<Hit>(context, mixer.input("bass"), bassStroke);
    const guitar = new Sounder<Hit>(context, mixer.input("guitar"), guitarStroke);
    const chop = new Sounder<Hit>(context, mixer.input("chop"), chopStroke);
    const click = new Sounder<Hit>(context, mixer.input("click"), clickStroke);
    const countIn = new Sounder<Hit>(context, mixer.input("countIn"), clickStroke);
    this.mixer = mixer;
    this.band = { banjo, bass, guitar, chop, click, countIn };
    this.#sounders = [banjo, bass, guitar, chop, click, countIn];
  }

  /** Voices that sound now or are to. */
  get voices(): number {
    return this.#sounders.reduce((sum, { voices }) => sum + voices, 0);
  }

  /** Makes ready what a score needs, so that playing it costs next to nothing. */
  prepare(score: Score): void {
    this.band.banjo.prepare(score.notes);
    for (const part of ["bass", "guitar", "chop", "click"] as const) {
      this.band[part].prepare(score.hits.filter((hit) => hit.part === part));
    }
    this.band.countIn.prepare(countIn(score.meter, 1));
  }

  dispose(): void {
    for (const sounder of this.#sounders) {
      sounder.dispose();
    }
    this.mixer.dispose();
  }
}
