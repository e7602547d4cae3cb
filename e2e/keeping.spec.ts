import { spawn } from "node:child_process";
import { once } from "node:events";
import { chmod, mkdtemp, readdir, readFile, rm, truncate, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test as plain } from "@playwright/test";
import AxeBuilder from "./findings.ts";
import { barOf, button, editorOf, expect, placeLink, songsOf, test, writeSong } from "./openApp.ts";
