import { hashOf, type Place, placeOf } from "./place.ts";

/** Which place one is at; kept in the address, so that a reload comes back to it. */
export class Navigation {
  place: Place;
  readonly #write: (hash: string) => void;

  constructor(hash: string, write: (hash: string) => void) {
    this.place = $state.raw(placeOf(hash));
    this.#write = write;
  }

  go(place: Place): void {
    this.place = place;
    this.#write(hashOf(place));
  }

  /** The address has changed from outside: a link, Back, a hand. */
  follow(hash: string): void {
    if (hashOf(this.place) !== hash) this.place = placeOf(hash);
  }
}
