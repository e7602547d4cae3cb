import type { Answer, Host, StoredSong } from "../../src-shared/host.ts";
import type { SongVersion } from "./songHistory.ts";

/** A song as the songbook has it, as far as is known here: nothing else is written over. */
export class KeptSong {
  readonly #host: Host;
  readonly #id: string;
  /** The text that was last read or written. */
  #text: string;
  /** Texts that were sent and may have arrived: no answer came, or only the settings failed. */
  #unsure: readonly string[] = [];

  constructor(host: Host, { id, text }: StoredSong) {
    this.#host = host;
    this.#id = id;
    this.#text = text;
  }

  async write(version: SongVersion): Promise<Answer<null>> {
    const answer = await this.#send(version);
    if (answer.ok || answer.problem.code !== "changed" || this.#unsure.length === 0) return answer;
    const now = await this.#host.readSong({ id: this.#id });
    if (!now.ok || !this.#unsure.includes(now.value.text)) return answer;
    this.#text = now.value.text;
    return this.#send(version);
  }

  /** The song as it is kept now, to go on from. */
  async readAgain(): Promise<Answer<StoredSong>> {
    const answer = await this.#host.readSong({ id: this.#id });
    if (answer.ok) this.#is(answer.value.text);
    return answer;
  }

  async #send({ text, settings }: SongVersion): Promise<Answer<null>> {
    const answer = await this.#host.writeSong({ id: this.#id, text, settings, before: this.#text });
    if (answer.ok) this.#is(text);
    else if (answer.problem.code === "unreachable" || answer.problem.code === "disk")
      this.#unsure = [...this.#unsure, text].slice(-20);
    return answer;
  }

  #is(text: string): void {
    this.#text = text;
    this.#unsure = [];
  }
}
