/** What is used of fontkit 2, which has no types of its own. */
declare module "fontkit" {
  type Font = {
    readonly unitsPerEm: number;
    hasGlyphForCodePoint(codePoint: number): boolean;
    layout(text: string): { readonly advanceWidth: number };
  };
  export const create: (bytes: Uint8Array) => Font;
}
