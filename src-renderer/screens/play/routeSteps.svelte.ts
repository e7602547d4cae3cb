import { type Pin, pinsHolding } from "../../../src-shared/route/pins.ts";
import type { Route } from "../../../src-shared/route/route.ts";
import { words } from "../../../src-shared/wordTable.ts";
import { isSameRoute } from "../../parts/routeFacts.ts";
import type { Notices } from "../../state/notices.svelte.ts";
import type { OpenSong } from "../../state/openSong.svelte.ts";
import { MOST_ROUTES, planToSearch } from "./routeQuestion.ts";
import { RouteSearch } from "./routeSearch.svelte.ts";

/** What was asked for, from where the steps are counted. */
type Round = {
  /** Chart, tempo and plan but for the pins. */
  readonly about: string;
  readonly own: Route;
  readonly pins: readonly Pin[];
  readonly end: () => void;
};

const ABOUT = "a step to another route";

/** Steps through the routes that really differ without opening their list: on, and back again. */
export class RouteSteps {
  readonly #song: OpenSong;
  readonly #notices: Notices;
  readonly #search = new RouteSearch();
  #round: Round | null = null;
  #at = 0;
  /** The pins that the last step has put. */
  #put: readonly Pin[] | null = null;
  #wanted: number = $state(0);

  constructor(song: OpenSong, notices: Notices) {
    this.#song = song;
    this.#notices = notices;
  }

  /** The next route, or the one before; it comes as soon as all have been found. */
  step(by: -1 | 1): void {
    const { route } = this.#song.walk;
    if (!route || this.#song.walk.slots.length === 0) return;
    const { pins } = this.#song.settings.plan;
    const goesOn =
      this.#round?.about === this.#about && [this.#put, this.#round.pins].includes(pins);
    if (!goesOn) this.#begin(route);
    this.#wanted += by;
  }

  /** Takes the step that is wanted once the search is over; to be run as an effect. */
  follow(): void {
    if (this.#wanted === 0 || this.#search.looking || !this.#round) return;
    const by = this.#wanted;
    this.#wanted = 0;
    const { own, pins } = this.#round;
    const others = this.#search.found.filter((route) => !isSameRoute(route, own));
    const routes = [own, ...others].slice(0, MOST_ROUTES);
    this.#notices.dismissAbout(ABOUT);
    if (routes.length === 1) {
      const says = this.#search.problem ?? words.routes.noOther;
      this.#notices.say(says, null, ABOUT);
      return;
    }
    this.#at = (((this.#at + by) % routes.length) + routes.length) % routes.length;
    const route = routes[this.#at];
    const placed = route?.placements.map(({ voicing }) => voicing) ?? [];
    this.#put = this.#at === 0 ? pins : pinsHolding(this.#song.walk.slots, placed);
    this.#song.changePlan({ pins: this.#put });
    this.#notices.say(words.routes.nthIsOn(this.#at + 1, routes.length), null, ABOUT);
  }

  dispose(): void {
    this.#round?.end();
    this.#notices.dismissAbout(ABOUT);
  }

  get #about(): string {
    const { text, settings, patterns, ownHand } = this.#song;
    const { playTempo, picking, plan } = settings;
    return JSON.stringify([text, playTempo, picking, patterns, ownHand, { ...plan, pins: [] }]);
  }

  #begin(own: Route): void {
    this.#round?.end();
    const { text, settings, patterns, ownHand, walk } = this.#song;
    const { plan, playTempo, picking } = settings;
    const searched = planToSearch(plan, walk);
    const question = { text, plan: searched, playTempo, picking, patterns, ownHand };
    this.#at = 0;
    this.#put = null;
    this.#wanted = 0;
    this.#round = {
      about: this.#about,
      own,
      pins: plan.pins,
      end: this.#search.look(question),
    };
  }
}
