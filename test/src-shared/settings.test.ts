import * as v from "valibot";
import { describe, expect, test } from "vitest";
import { newSongSettings, songSettingsSchema } from "../../src-shared/settings.ts";

describe("a song's settings", () => {
  test("kept before there were notes are read with none", () => {
    const { notes, ...before } = newSongSettings;
    expect(notes).toBe("");
    expect(v.parse(songSettingsSchema, before)).toEqual(newSongSettings);
  });

  test("keep notes as they were typed, up to two closely written pages", () => {
    const typed = { ...newSongSettings, notes: "Softly.\n\n  À la fin." };
    expect(v.parse(songSettingsSchema, typed)).toEqual(typed);
    const endless = { ...newSongSettings, notes: "m".repeat(8001) };
    expect(v.safeParse(songSettingsSchema, endless).success).toBe(false);
  });
});
