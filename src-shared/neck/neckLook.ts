import * as v from "valibot";

/** How a player likes to see the neck. */
export type NeckLook = {
  /** The side of the screen that the nut is on. */
  readonly nut: "left" | "right";
  /** As the player looks down on it (string 1 on top), or as a listener sees it (string 5 on top). */
  readonly seen: "player" | "listener";
  /** Every root of the chord held now is marked, on all strings. */
  readonly roots: boolean;
  /** Every place carries the name of its note. */
  readonly noteNames: boolean;
};

/** Checks a neck's look as it comes from disk or over the wire. */
export const neckLookSchema: v.GenericSchema<unknown, NeckLook> = v.object({
  nut: v.picklist(["left", "right"]),
  seen: v.picklist(["player", "listener"]),
  roots: v.boolean(),
  noteNames: v.boolean(),
});

/** As a right-handed player looks down on it, without aids. */
export const usualNeckLook: NeckLook = {
  nut: "left",
  seen: "player",
  roots: false,
  noteNames: false,
};

/**
 * The hand that stops the strings of a neck seen so: the nut is at the left for a right-handed
 * player who looks down, and at the right for who faces that player.
 * @example playerOf({ nut: "right", seen: "listener" }) // => "right-handed"
 */
export const playerOf = ({
  nut,
  seen,
}: Pick<NeckLook, "nut" | "seen">): "right-handed" | "left-handed" =>
  (nut === "left") === (seen === "player") ? "right-handed" : "left-handed";

/**
 * The same player seen from the other side: nut and strings both change sides.
 * @example fromOtherSide({ nut: "left", seen: "player" }) // => { nut: "right", seen: "listener" }
 */
export const fromOtherSide = ({
  nut,
  seen,
}: Pick<NeckLook, "nut" | "seen">): Pick<NeckLook, "nut" | "seen"> => ({
  nut: nut === "left" ? "right" : "left",
  seen: seen === "player" ? "listener" : "player",
});
