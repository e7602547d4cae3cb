import { expect, test } from "vitest";
import { menuTemplate } from "../../../src-main/desktop/menu.ts";

const rolesOf = (platform: NodeJS.Platform): readonly string[] =>
  menuTemplate(platform).flatMap((item) => [
    item.role ?? "",
    ...(Array.isArray(item.submenu) ? item.submenu.map(({ role }) => role ?? "") : []),
  ]);

test("the menu copies and pastes, zooms and closes, and has the program's own menu on macOS only", () => {
  expect(rolesOf("linux")).toEqual(
    expect.arrayContaining(["fileMenu", "copy", "paste", "zoomIn", "windowMenu"]),
  );
  expect(rolesOf("linux")).not.toContain("appMenu");
  expect(rolesOf("darwin")[0]).toBe("appMenu");
});

test("the menu leaves undo and redo to the chart", () => {
  expect(rolesOf("win32").filter((role) => /undo|redo/.test(role))).toEqual([]);
});
