import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { words } from "../../src-shared/wordTable.ts";
import { namesIn, sentencesIn, wordsIn } from "./literalWords.ts";

const TABLE = "src-shared/wordTable.ts";
const tracked = execFileSync("git", ["ls-files", "--cached", "--others", "--exclude-standard"], {
  encoding: "utf8",
}).split("\n");
const sources = tracked
  .filter((path) => /^src-(shared|main|renderer)\/.*\.(ts|svelte)$/.test(path) && path !== TABLE)
  .map((path) => ({ path, text: readFileSync(path, "utf8") }));

/** HTTP's, the system's and the terminal's; names of keys and tunings, as a chart has them. */
const notWords: readonly string[] = [
  "GET, HEAD",
  "Application Support",
  "CI is set",
  "Cb Gb Db Ab Eb Bb F C G D A E B F# C#",
  "Ab Eb Bb F C G D A E B F# C# G# D# A#",
  "G modal",
  "G minor",
];

/** The leaves of a table with their names: "act.undo". */
const leavesOf = (part: unknown, name = ""): readonly (readonly [string, unknown])[] =>
  typeof part === "object" && part !== null
    ? Object.entries(part).flatMap(([key, value]) =>
        leavesOf(value, name === "" ? key : `${name}.${key}`),
      )
    : [[name, part]];

describe("the words on the screen", () => {
  test("stand in no component", () => {
    const components = sources.filter(({ path }) => path.endsWith(".svelte"));
    expect(components.length).toBeGreaterThan(90);
    expect(
      components.flatMap(({ path, text }) =>
        wordsIn(text).map((found) => `${path}:${found.line} ${found.text}`),
      ),
    ).toEqual([]);
  });

  test("stand in no other source of the screen", () => {
    const scripts = sources.filter(({ path }) => /^src-renderer\/.*\.ts$/.test(path));
    expect(scripts.length).toBeGreaterThan(100);
    expect(
      scripts.flatMap(({ path, text }) =>
        sentencesIn(text).map((found) => `${path}:${found.line} ${found.text}`),
      ),
    ).toEqual([]);
  });

  test("stand in no room below the screen", () => {
    const rooms = sources.filter(
      ({ path }) =>
        /^src-(shared|main)\/.*\.ts$/.test(path) &&
        !/^src-shared\/demo\/|^src-main\/command\/|\/main\.ts$/.test(path),
    );
    expect(rooms.length).toBeGreaterThan(200);
    expect(
      rooms.flatMap(({ path, text }) =>
        sentencesIn(text)
          .filter((found) => !notWords.includes(found.text))
          .map((found) => `${path}:${found.line} ${found.text}`),
      ),
    ).toEqual([]);
  });

  test.each([
    ["between tags", "<p>Hold it here</p>", "Hold it here"],
    ["in a branch", "{#if on}<b>now</b>{:else}later{/if}", "now"],
    ["beside what is shown", "<p>{count} bars</p>", "bars"],
    ["in a snippet", "<A>{#snippet tools()}<button>Go</button>{/snippet}</A>", "Go"],
    ["shown as a literal", '<p>{on ? "held" : ""}</p>', "held"],
    ["in a template", `<p>{\`\${count} bars\`}</p>`, "1 bars"],
    ["in a choice of two", '<p>{kind === "no pin" ? "none" : name("a pin")}</p>', "none"],
    ["in a name", '<button aria-label="Close"></button>', "Close"],
    ["in a name with a value", '<button aria-label="Delete {title}"></button>', "Delete"],
    ["in a name that is worked out", '<i title={on ? "Held" : ""}></i>', "Held"],
    ["in a placeholder", '<input placeholder="title or key" />', "title or key"],
    ["in a picture's text", '<img alt="the neck" />', "the neck"],
    ["in a part's property", '<Choice label="Quality" />', "Quality"],
    [
      "in a script",
      '<script lang="ts">const a = "Press Play to go on.";</script>',
      "Press Play to go on.",
    ],
  ])("are found %s", (_, source, text) => {
    expect(wordsIn(source).map((found) => found.text)).toContain(text);
  });

  test("are told from marks, keys, chord names and what no one reads", () => {
    const source = `<script lang="ts">
      import Part from "./Some Part.svelte";
      if (broken) throw new Error("There is no such bar");
    </script>
    <p class="long name" style="--left: 3px">→ ½ {names.join(", ")} <kbd>T</kbd> N.C. {say("no pin")}</p>
    <div role="alert" data-part="one two" aria-hidden="true"></div>`;
    expect(wordsIn(source)).toEqual([]);
    expect(sentencesIn(`const says = \`No sound. \${reason} Press Play.\`;`)).toEqual([
      { line: 1, text: "No sound. 1 Press Play." },
    ]);
    expect(
      sentencesIn('const keys = ["PageUp", "Mod-Shift-z"]; read("Title: A\\n| G |");'),
    ).toEqual([]);
  });
});

describe("the table of words", () => {
  test.each([
    ["by its full name", 'import { words } from "a";\nsay(words.act.undo);', "act.undo"],
    [
      "under another name",
      'import { words as table } from "a";\nsay(table\n  .act.undo);',
      "act.undo",
    ],
    ["by a mark", 'import { words } from "a";\nsay(words.hand["let-one"]);', "hand.let-one"],
    ["by a section", 'import { words } from "a";\nconst say = words.act;\nsay.undo;', "act.undo"],
    ["by a part", 'import { words } from "a";\nconst { act } = words;\nact.undo;', "act.undo"],
    ["by parts", 'import { words } from "a";\nconst { undo: a, redo } = words.act;', "act.redo"],
  ])("is spoken of %s", (_, source, name) => {
    expect(namesIn(source)).toEqual(expect.arrayContaining([name]));
    expect(namesIn(source)).not.toContain("act");
  });

  test("has no word that nothing uses", () => {
    const used = new Set(sources.flatMap(({ text }) => namesIn(text)));
    const isUsed = (name: string): boolean => {
      const steps = name.split(".");
      return (
        used.has(`${steps[0]}.*`) ||
        steps.some((_, index) => index > 0 && used.has(steps.slice(0, index + 1).join(".")))
      );
    };
    const idle = leavesOf(words).flatMap(([name]) => (isUsed(name) ? [] : [name]));
    expect(idle).toEqual([]);
  });

  const table = ts.createSourceFile(
    TABLE,
    readFileSync(TABLE, "utf8"),
    ts.ScriptTarget.Latest,
    true,
  );

  /** The function at a name in the table's source. */
  const functionAt = (name: string): ts.ArrowFunction => {
    const last = name.split(".").reduce<ts.Node>((part, step) => {
      const found: { node: ts.Node | null } = { node: null };
      const look = (node: ts.Node): void => {
        if (found.node) return;
        if (ts.isPropertyAssignment(node) && node.name.getText().replaceAll('"', "") === step) {
          found.node = node.initializer;
        } else if (!ts.isPropertyAssignment(node)) ts.forEachChild(node, look);
      };
      ts.forEachChild(part, look);
      if (!found.node) throw new Error(`no ${step} of ${name} in ${TABLE}`);
      return found.node;
    }, table);
    if (!ts.isArrowFunction(last)) throw new Error(`${name} is no arrow function`);
    return last;
  };

  /** What may be given to a parameter of a type as it is written. */
  const samplesOf = (type: string): readonly unknown[] => {
    if (type.includes(" | ")) return type.split(" | ").flatMap(samplesOf);
    if (/^"[^"]*"$|^-?\d+$/.test(type)) return [JSON.parse(type)];
    switch (type) {
      case "number":
        return [0, 1, 2, 11];
      case "string":
        return ["Quince", "Medlar"];
      case "boolean":
        return [true, false];
      case "null":
        return [null];
      case "readonly number[]":
        return [[3], [1, 4], [2, 5, 9]];
      case "readonly string[]":
        return [["Quince"], ["Medlar", "Sorb"], ["Sorb", "Quince", "Rowan"]];
      default:
        throw new Error(`no samples of the type ${type}: give words numbers, names or choices`);
    }
  };

  const together = (samples: readonly (readonly unknown[])[]): readonly (readonly unknown[])[] =>
    samples.reduce<readonly (readonly unknown[])[]>(
      (rows, next) => rows.flatMap((row) => next.map((each) => [...row, each])),
      [[]],
    );

  const isSaid = (said: unknown): boolean =>
    typeof said === "string" && /\S/.test(said) && !/undefined|NaN|\bnull\b|\[object/.test(said);

  test("says something at every name", () => {
    const leaves = leavesOf(words);
    expect(leaves.length).toBeGreaterThan(500);
    const silent = leaves.filter(([, leaf]) => typeof leaf !== "function" && !isSaid(leaf));
    expect(silent).toEqual([]);
  });

  const functions = leavesOf(words).flatMap(([name, leaf]) =>
    typeof leaf === "function" ? [{ name, say: leaf as (...given: unknown[]) => unknown }] : [],
  );

  test.each(functions)("says $name of whatever it is given", ({ name, say }) => {
    const types = functionAt(name).parameters.map(({ type }) => type?.getText() ?? "");
    expect(types.length).toBeGreaterThan(0);
    const rows = together(types.map(samplesOf)).map((given) => ({ given, said: say(...given) }));
    // Of nothing at all it may say nothing.
    const isOfNothing = (given: readonly unknown[]): boolean => given.every((each) => each === 0);
    expect(rows.filter(({ given, said }) => !isSaid(said) && !isOfNothing(given))).toEqual([]);
    // Whatever it is given makes a difference to what it says.
    const idle = types.filter((_, place) =>
      rows.every(({ given, said }) =>
        rows.every(
          (other) =>
            other.given.some((each, index) => index !== place && each !== given[index]) ||
            other.said === said,
        ),
      ),
    );
    expect(idle).toEqual([]);
  });
});
