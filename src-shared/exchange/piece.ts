/** A chord symbol where it stands in a piece. */
export type PieceSymbol = {
  /** Ticks from the bar line on the left; need not be whole. */
  readonly at: number;
  /** As a chart writes it. */
  readonly symbol: string;
};

/** What a file has between two bar lines: a measure, or part of one. */
export type Piece = {
  /** What the file calls the bar, for words: "8". */
  readonly number: string;
  /** The time signature it stands in, as the file has it: "4/4", "free time". */
  readonly meter: string;
  /** In ticks; need not be a full bar. */
  readonly length: number;
  readonly symbols: readonly PieceSymbol[];
  /** A section's label where one starts here. */
  readonly label: string | null;
  readonly opensRepeat: boolean;
  /** How often the passage that ends here is played; 1 where no repeat ends. */
  readonly plays: number;
  readonly ending: readonly number[] | null;
  /** A double bar, or an ending's end, on the right. */
  readonly endsEnding: boolean;
};
