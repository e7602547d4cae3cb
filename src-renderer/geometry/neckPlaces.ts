import type { Voicing } from "../../src-shared/voicing/voicing.ts";
import { fingerX, type NeckView } from "./neckGeometry.ts";

/** What a player may want of a place: hold it, keep off it, or take its pin off. */
export type PinChoice = "this time" | "every time" | "avoid" | "off";

/** One place where a chord can be held. */
export type NeckPlace = {
  readonly voicing: Voicing;
  /** "C, D shape, fret 12" */
  readonly name: string;
  /** The hand is there now. */
  readonly held: boolean;
  /** Within the shapes and frets that the route may use. */
  readonly allowed: boolean;
  readonly pin: "none" | "hold" | "avoid";
  /** What can be done about it, in this order. */
  readonly choices: readonly PinChoice[];
};

/** The width and height that a place's mark takes, with the room around it. Pixels. */
export const MARK_WIDTH = 36;
export const MARK_HEIGHT = 34;

/** Where a place's mark stands, and what of the neck belongs to it. Pixels, rows from 0. */
export type PlaceMark = {
  readonly place: NeckPlace;
  readonly x: number;
  readonly row: number;
  readonly from: number;
  readonly to: number;
};

const stopped = (voicing: Voicing): readonly number[] =>
  voicing.frets.flatMap((fret) => (fret === null ? [] : [fret]));

/** A mark under each place, in as many rows as keep marks from touching. */
export const placeMarks = (places: readonly NeckPlace[], view: NeckView): readonly PlaceMark[] => {
  const taken: number[] = [];
  return places
    .map((place) => {
      const frets = stopped(place.voicing);
      const ends = [fingerX(view, Math.min(...frets)), fingerX(view, Math.max(...frets))];
      const [from, to] = [Math.min(...ends), Math.max(...ends)];
      return { place, x: (from + to) / 2, from, to };
    })
    .toSorted((a, b) => a.x - b.x)
    .map((mark) => {
      const free = taken.findIndex((end) => mark.x - MARK_WIDTH / 2 >= end);
      const row = free < 0 ? taken.length : free;
      taken[row] = mark.x + MARK_WIDTH / 2;
      return { ...mark, row };
    });
};

/** How many rows marks stand in. */
export const rowCount = (marks: readonly PlaceMark[]): number =>
  marks.reduce((most, { row }) => Math.max(most, row + 1), 0);
