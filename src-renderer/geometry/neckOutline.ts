import {
  type NeckView,
  PEG_FRET,
  type StringView,
  stringY,
  toFifth,
  upward,
  wireX,
} from "./neckGeometry.ts";

/** Wood beyond the outer strings, as a share of the gap between two. */
const EDGE = 0.55;
/** Wood after the last fret shown. Pixels. */
const AFTER_LAST = 10;

/** Where the board's edges lie. Pixels. */
export type NeckEdges = {
  /** Beyond string 1. */
  readonly first: number;
  /** Beyond string 4, where the neck is narrow. */
  readonly fourth: number;
  /** Beyond string 5. */
  readonly fifth: number;
  readonly nut: number;
  readonly end: number;
  readonly peg: number;
};

/** The board's edges; a part of the neck begins at its first wire instead of the nut. */
export const neckEdges = (view: NeckView, strings: StringView): NeckEdges => {
  const beyond = toFifth(strings) * strings.gap * EDGE;
  return {
    first: stringY(strings, 1) - beyond,
    fourth: stringY(strings, 4) + beyond,
    fifth: stringY(strings, 5) + beyond,
    nut: wireX(view, view.frets.low),
    end: wireX(view, view.frets.high) + upward(view) * AFTER_LAST,
    peg: wireX(view, PEG_FRET),
  };
};

/** The board's outline: narrow up to the short string's peg, if that is shown, and wide after it. */
export const neckOutline = (view: NeckView, strings: StringView): string => {
  const { first, fourth, fifth, nut, end, peg } = neckEdges(view, strings);
  const whole = `M${nut} ${first}H${end}V${fifth}`;
  if (view.frets.low >= PEG_FRET) return `${whole}H${nut}Z`;
  const on = (px: number): number => peg + upward(view) * px;
  return `${whole}H${on(6)}C${on(-14)} ${fifth} ${on(-10)} ${fourth} ${on(-34)} ${fourth}H${nut}Z`;
};
