/**
 * A chord's or a key's name with the signs that music prints.
 * @example engraved("Bbm7b5/F#") // => "B♭m7♭5/F♯"
 */
export const engraved = (name: string): string =>
  name
    .replaceAll(/([A-G])b/g, "$1♭")
    .replaceAll(/b(?=\d)/g, "♭")
    .replaceAll("#", "♯");
