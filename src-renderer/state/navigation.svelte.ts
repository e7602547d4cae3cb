import { hashOf, type Place, placeOf } from "./place.ts";

/** What writes the address: a new one behind the last, or in its stead. */
export type Address = {
  readonly push: (hash: string) => void;
  readonly replace: (hash: string) => void;
};

/** Which place one is at; kept in the address, so that a reload comes back to it. */
export class Navigation {
  place: Place;
  readonly #address: Address;

  /** An address that names no place becomes that of the songbook. */
  constructor(hash: string, address: Address) {
    this.place = $state.raw(placeOf(hash));
    this.#address = address;
    this.#tidy(hash);
  }

  go(place: Place): void {
    this.place = place;
    this.#address.push(hashOf(place));
  }

  /** Goes to a place instead of the one that is shown: Back does not come here again. */
  replace(place: Place): void {
    this.place = place;
    this.#address.replace(hashOf(place));
  }

  /** The address has changed from outside: a link, Back, a hand. */
  follow(hash: string): void {
    if (hashOf(this.place) !== hash) this.place = placeOf(hash);
    this.#tidy(hash);
  }

  #tidy(hash: string): void {
    if (this.place.kind === "songbook" && hash !== hashOf(this.place)) this.replace(this.place);
  }
}
