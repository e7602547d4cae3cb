import { describe, expect, test } from "vitest";
import { blockLabel, textRoom } from "../../../src-renderer/geometry/blockLabel.ts";

describe("the name of a block on the hand path", () => {
  test("has its shape beside it where there is room", () => {
    expect(blockLabel("G", "D shape", 200, 230)).toMatchObject({ size: 18, withShape: true });
  });

  test("stays within its block, or stands over it within the room to the next chord", () => {
    for (const chord of ["G", "C#m", "Bbm7b5", "Gbdim7", "Abmaj7"]) {
      for (let width = 1; width < 160; width += 1) {
        const label = blockLabel(chord, "barre", width, width + 10);
        if (!label) continue;
        const taken = label.squeezed ?? textRoom(chord, label.size);
        expect(label.pad + taken).toBeLessThanOrEqual(label.above ? width + 10 : width);
      }
    }
  });

  test("stands over a block that is too narrow for it", () => {
    expect(blockLabel("Bbm7b5", "D shape", 38, 58)).toMatchObject({ above: true, size: 13 });
  });

  test("is squeezed over a narrow one, and left out where it could not be read", () => {
    expect(blockLabel("Bbm7b5", "D shape", 20, 45)?.squeezed).toBe(41);
    expect(blockLabel("Bbm7b5", "D shape", 8, 20)).toBeNull();
  });
});
