import type { Answer, Host, StoredSong } from "../../src-shared/host.ts";
import type { SongSettings } from "../../src-shared/settings.ts";
import type { SongVersion } from "./songHistory.ts";

/** A song as the songbook has it, as far as is known here: nothing else is written over. */
export class KeptSong {
  readonly #host: Host;
  #id: string;
  /** The text and the settings that were last read or written. */
  #text: string;
  #settings: SongSettings;
  /** Versions that were sent and may have arrived: no answer came, or only the settings failed. */
  #unsure: readonly SongVersion[] = [];

  constructor(host: Host, { id, text, settings }: StoredSong) {
    this.#host = host;
    this.#id = id;
    this.#text = text;
    this.#settings = settings;
  }

  /** The songbook has it under another id from now on. */
  movedTo(id: string): void {
    this.#id = id;
  }

  async write(version: SongVersion): Promise<Answer<null>> {
    const answer = await this.#send(version);
    if (answer.ok || answer.problem.code !== "changed" || this.#unsure.length === 0) return answer;
    const now = await this.#host.readSong({ id: this.#id });
    if (!now.ok || !this.#isOurs(now.value)) return answer;
    this.#text = now.value.text;
    this.#settings = now.value.settings;
    return this.#send(version);
  }

  /** The song as it is kept now, to go on from. */
  async readAgain(): Promise<Answer<StoredSong>> {
    const answer = await this.#host.readSong({ id: this.#id });
    if (answer.ok) this.#is(answer.value);
    return answer;
  }

  async #send(version: SongVersion): Promise<Answer<null>> {
    const before = { before: this.#text, settingsBefore: this.#settings };
    const answer = await this.#host.writeSong({ id: this.#id, ...version, ...before });
    if (answer.ok) this.#is(version);
    else if (answer.problem.code === "unreachable" || answer.problem.code === "disk")
      this.#unsure = [...this.#unsure, version].slice(-20);
    return answer;
  }

  /** Whether a song is one that was sent from here, or of one the text and of another the settings. */
  #isOurs(now: SongVersion): boolean {
    const sent = [...this.#unsure, { text: this.#text, settings: this.#settings }];
    const settings = JSON.stringify(now.settings);
    return (
      sent.some(({ text }) => text === now.text) &&
      sent.some((version) => JSON.stringify(version.settings) === settings)
    );
  }

  #is({ text, settings }: SongVersion): void {
    this.#text = text;
    this.#settings = settings;
    this.#unsure = [];
  }
}

/** With one kind of line break, so that places in the text are the same to reader and editor. */
export const versionOf = ({ text, settings }: StoredSong): SongVersion => ({
  text: text.replaceAll(/\r\n?/g, "\n"),
  settings,
});

/** Settings with another key to play in; as they are where that is null. */
export const inKey = (settings: SongSettings, playKey: string | null): SongSettings =>
  playKey === null ? settings : { ...settings, plan: { ...settings.plan, playKey } };
