import type { Mark, Region } from "./page.ts";
import { shift } from "./pen.ts";

/** Something that stands on one page as a whole, drawn from its own left top corner. */
export type Block = {
  readonly kind: Region["kind"];
  readonly name: string;
  readonly height: number;
  /** White above it where it is not the first of its page. */
  readonly before: number;
  /** It must not be the last of its page: a heading, say. */
  readonly keepsNext: boolean;
  readonly marks: readonly Mark[];
};

/** A page while it is filled: blocks and where their tops are. */
export type Column = readonly { readonly block: Block; readonly top: number }[];

/** Systems on a page may be drawn apart by as much as this each, in points. */
const MOST_STRETCH = 16;
/** A page fuller than this is filled to its foot. */
const FULL = 0.8;
/** Fewer systems than this are not left alone on a last page. */
const LEAST_SYSTEMS = 2;

/** Blocks that must stay together: a heading and what follows it. */
const groupsOf = (blocks: readonly Block[]): readonly (readonly Block[])[] => {
  const groups: Block[][] = [];
  let open: Block[] | null = null;
  for (const block of blocks) {
    if (open === null) {
      open = [];
      groups.push(open);
    }
    open.push(block);
    if (!block.keepsNext) open = null;
  }
  return groups;
};

const heightOf = (blocks: readonly Block[]): number =>
  blocks.reduce((sum, { height, before }, index) => sum + height + (index === 0 ? 0 : before), 0);

const fits = (page: readonly Block[], more: readonly Block[], room: number): boolean =>
  heightOf([...page, ...more]) <= room;

const filled = (blocks: readonly Block[], room: number): Block[][] => {
  const pages: Block[][] = [];
  let page: Block[] = [];
  let height = 0;
  const put = (group: readonly Block[]): void => {
    const first = page.length === 0 ? 0 : (group[0]?.before ?? 0);
    page.push(...group);
    height += first + heightOf(group);
  };
  for (const group of groupsOf(blocks)) {
    const white = page.length === 0 ? 0 : (group[0]?.before ?? 0);
    if (page.length > 0 && height + white + heightOf(group) > room) {
      pages.push(page);
      page = [];
      height = 0;
    }
    put(group);
  }
  if (page.length > 0) pages.push(page);
  return pages;
};

/** A single system left over on a last page gets the one before it for company. */
const accompanied = (pages: readonly Block[][], room: number): readonly (readonly Block[])[] => {
  const last = pages.at(-1) ?? [];
  const before = pages.at(-2) ?? [];
  const systems = last.filter(({ kind }) => kind === "system").length;
  const mover = before.at(-1);
  const headed = before.at(-2)?.keepsNext === true;
  const spare = before.filter(({ kind }) => kind === "system").length > LEAST_SYSTEMS;
  const alone = systems > 0 && systems < LEAST_SYSTEMS && last[0]?.kind === "system";
  if (!alone || !spare || headed || mover?.kind !== "system" || !fits([mover], last, room))
    return pages;
  return [...pages.slice(0, -2), before.slice(0, -1), [mover, ...last]];
};

const column = (page: readonly Block[], room: number, isLast: boolean): Column => {
  const height = heightOf(page);
  const stretches = (index: number): boolean =>
    index > 0 && page[index]?.kind === "system" && page[index - 1]?.keepsNext === false;
  const gaps = page.filter((_, index) => stretches(index)).length;
  const left = room - height;
  const stretch =
    isLast || gaps === 0 || height < room * FULL ? 0 : Math.min(MOST_STRETCH, left / gaps);
  let top = 0;
  return page.map((block, index) => {
    const extra = stretches(index) ? stretch : 0;
    top += index === 0 ? 0 : block.before + extra;
    const placed = { block, top };
    top += block.height;
    return placed;
  });
};

/**
 * Blocks on pages with `room` points of height each: none is cut, a heading stays with what follows
 * it, no system is left alone on a last page, and pages of systems are filled to their foot. A block
 * higher than the room has a page of its own.
 */
export const flow = (blocks: readonly Block[], room: number): readonly Column[] => {
  const pages = accompanied(filled(blocks, room), room);
  return pages.map((page, index) => column(page, room, index === pages.length - 1));
};

/** What a column puts on paper, its left top corner at x and y. */
export const printColumn = (
  placed: Column,
  x: number,
  y: number,
): { readonly marks: readonly Mark[]; readonly regions: readonly Region[] } => ({
  marks: placed.flatMap(({ block, top }) => block.marks.map((mark) => shift(mark, x, y + top))),
  regions: placed.map(({ block, top }) => ({
    kind: block.kind,
    name: block.name,
    top: y + top,
    bottom: y + top + block.height,
  })),
});
