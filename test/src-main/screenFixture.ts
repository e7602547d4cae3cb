import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { tempFolder } from "./tempFolder.ts";

export const page = "<!doctype html><title>a screen</title>";
export const script = "document.title = 'a script';";
export const secret = "not for the screen";

/** A built screen of two files, beside a file that is none of the screen's business. */
export const screenFixture = async (): Promise<string> => {
  const base = await tempFolder();
  const screen = join(base, "renderer");
  await mkdir(join(screen, "assets"), { recursive: true });
  await writeFile(join(screen, "index.html"), page);
  await writeFile(join(screen, "assets", "index-B4x_9-Qz.js"), script);
  await writeFile(join(screen, ".hidden.json"), secret);
  await writeFile(join(screen, "notes.md"), secret);
  await writeFile(join(base, "secret.json"), secret);
  return screen;
};

/** Ways to ask for what is not the screen's, as they stand in a request line. */
export const waysOut: readonly string[] = [
  "/../secret.json",
  "/assets/../../secret.json",
  "/%2e%2e/secret.json",
  "/%2E%2E%2Fsecret.json",
  "/..%2fsecret.json",
  "/..%5csecret.json",
  "/..\\secret.json",
  "/%252e%252e/secret.json",
  "/....//secret.json",
  "//secret.json",
  "/assets/%00/../../secret.json",
  "/secret.json%00.html",
  "/.hidden.json",
  "/notes.md",
  "/assets/",
  "/assets",
  "/link.json",
  "/%",
  "/%ff.html",
  "/C:/secret.json",
  "/index.html/",
  "/index.html/x.json",
];
