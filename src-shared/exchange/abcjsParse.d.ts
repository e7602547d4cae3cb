/** The parser of abcjs 6.7.2 alone, without its engraver; the package has types for the whole only. */
declare module "abcjs/src/parse/abc_parse.js" {
  type AbcElement = {
    readonly el_type: string;
    readonly startChar?: number;
    readonly endChar?: number;
    readonly duration?: number;
    readonly decoration?: readonly string[];
    readonly chord?: readonly { readonly name: string; readonly position?: string }[];
    readonly pitches?: readonly unknown[];
    readonly rest?: { readonly type: string };
    readonly lyric?: readonly unknown[];
    readonly startTriplet?: number;
    readonly endTriplet?: boolean;
    readonly tripletMultiplier?: number;
    readonly startEnding?: string;
    readonly endEnding?: boolean;
    readonly type?: string;
    readonly value?: readonly { readonly num: string; readonly den?: string }[];
    readonly title?: string;
  };
  type AbcStaff = {
    readonly meter?: Pick<AbcElement, "type" | "value">;
    readonly key?: unknown;
    readonly voices?: readonly (readonly AbcElement[])[];
  };
  type AbcTune = {
    readonly lines: readonly { readonly staff?: readonly AbcStaff[] }[];
    readonly metaText: {
      readonly title?: string;
      readonly partOrder?: string;
      readonly tempo?: { readonly duration?: readonly number[]; readonly bpm?: number };
    };
    getKeySignature(): { readonly root: string; readonly acc: string; readonly mode: string };
  };
  class Parse {
    parse(abc: string, options: Readonly<Record<string, never>>): void;
    getTune(): AbcTune;
  }
  export = Parse;
}
