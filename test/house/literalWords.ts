import { parse } from "svelte/compiler";
import ts from "typescript";

/** Words that stand in a source though they should stand in the table of words. */
export type LiteralWords = { readonly line: number; readonly text: string };

/** Attributes and properties whose value a player reads or hears. */
const spoken =
  /^(aria-label|aria-description|aria-roledescription|title|placeholder|alt|label|legend|says|advice|about|description|otherwise|what|action)$/;
/** Two letters together: "N.C.", the key T and a lone figure are no words. */
const word = /\p{L}{2}/u;
/** A capital, and one word more behind it. */
const sentence = /^[“"(]?\p{Lu}\p{L}*(?:['’]\p{L}+)?[,:;]?\s.*\p{L}{2}/u;
/** Charts are written in our own chart language, whatever language the player reads. */
const chart = /^(Title|Key|Time|Tempo|Form): |\|/;

type Node = Readonly<Record<string, unknown>> & { readonly type: string };
const isNode = (value: unknown): value is Node =>
  typeof value === "object" && value !== null && "type" in value && typeof value.type === "string";

type Place = { readonly start: number; readonly end: number };
const placeOf = (node: unknown): Place | null =>
  typeof node === "object" &&
  node !== null &&
  "start" in node &&
  "end" in node &&
  typeof node.start === "number" &&
  typeof node.end === "number"
    ? { start: node.start, end: node.end }
    : null;

const lineAt = (source: string, at: number): number => source.slice(0, at).split("\n").length;

/** What a template says, with something short in the place of what it is given. */
const textOf = (node: ts.Node): string | null => {
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) return node.text;
  return ts.isTemplateExpression(node)
    ? `${node.head.text}${node.templateSpans.map(({ literal }) => `1${literal.text}`).join("")}`
    : null;
};

/** Errors are for developers: a player never reads them. */
const isThrown = (node: ts.Node): boolean =>
  ts.isNewExpression(node) && /^\w*Error$/.test(node.expression.getText());

/** What is shown of an expression by itself: the branches, not what is asked or called. */
const shownOf = (node: ts.Node): readonly ts.Node[] => {
  if (ts.isParenthesizedExpression(node)) return shownOf(node.expression);
  if (ts.isConditionalExpression(node)) return [node.whenTrue, node.whenFalse].flatMap(shownOf);
  const joins = [
    ts.SyntaxKind.PlusToken,
    ts.SyntaxKind.BarBarToken,
    ts.SyntaxKind.AmpersandAmpersandToken,
    ts.SyntaxKind.QuestionQuestionToken,
  ];
  return ts.isBinaryExpression(node) && joins.includes(node.operatorToken.kind)
    ? [node.left, node.right].flatMap(shownOf)
    : [node];
};

type Literal = { readonly at: number; readonly text: string };

/** The sentences among a script's string literals; with `shows` also the words that it comes to. */
const literalsOf = (script: string, shows: boolean): readonly Literal[] => {
  const found: Literal[] = [];
  const file = ts.createSourceFile("a.ts", script, ts.ScriptTarget.Latest, true);
  const [first] = file.statements;
  const shown = new Set(
    shows && first && ts.isExpressionStatement(first) ? shownOf(first.expression) : [],
  );
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isTypeNode(node) || isThrown(node)) return;
    const text = textOf(node);
    const wanted = shown.has(node) ? word : sentence;
    if (text !== null && wanted.test(text) && !chart.test(text)) {
      found.push({ at: node.getStart(), text });
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
};

/** Sentences that stand as literals in a TypeScript source. */
export const sentencesIn = (source: string): readonly LiteralWords[] =>
  literalsOf(source, false).map(({ at, text }) => ({ line: lineAt(source, at), text }));

/** Words that stand as literals in the markup of a Svelte source, and sentences in its scripts. */
export const wordsIn = (source: string): readonly LiteralWords[] => {
  const found: LiteralWords[] = [];
  const take = (at: number, text: string): void => {
    found.push({ line: lineAt(source, at), text: text.trim().replace(/\s+/g, " ") });
  };
  const takeLiterals = (place: Place | null, shows: boolean): void => {
    if (!place) return;
    for (const { at, text } of literalsOf(`(${source.slice(place.start, place.end)})`, shows)) {
      take(place.start + at - 1, text);
    }
  };
  const visit = (value: unknown, isRead: boolean): void => {
    if (Array.isArray(value)) {
      for (const each of value) visit(each, isRead);
      return;
    }
    if (!isNode(value)) return;
    const place = placeOf(value);
    switch (value.type) {
      case "Text":
        if (isRead && place && word.test(source.slice(place.start, place.end))) {
          take(place.start, source.slice(place.start, place.end));
        }
        return;
      case "Attribute":
        visit(value["value"], spoken.test(String(value["name"])));
        return;
      case "StyleDirective":
        visit(value["value"], false);
        return;
      case "ExpressionTag":
        takeLiterals(placeOf(value["expression"]), isRead);
        return;
      case "Comment":
        return;
      default:
        for (const [name, part] of Object.entries(value)) {
          if (name !== "metadata") visit(part, isRead);
        }
    }
  };
  const { fragment, instance, module } = parse(source, { modern: true });
  // What stands between tags is read; what stands in an attribute only where that is spoken.
  visit(fragment, true);
  for (const script of [instance, module]) {
    const place = placeOf(script?.content);
    if (!place) continue;
    for (const { at, text } of literalsOf(source.slice(place.start, place.end), false)) {
      take(place.start + at, text);
    }
  }
  return found.toSorted((a, b) => a.line - b.line);
};

/**
 * The names in the table of words that a source speaks of, in full: "act.undo"; a section by itself
 * is none. Other names for the table and its parts are followed.
 */
export const namesIn = (source: string): readonly string[] => {
  const short = new Map<string, string>();
  for (const [, name] of source.matchAll(/\bimport \{ words(?: as (\w+))? \}/g)) {
    short.set(name ?? "words", "");
  }
  const found = new Set<string>();
  const speakOf = (path: string): void => {
    if (path.includes(".")) found.add(path);
  };
  // An alias stands before what it is used in; one of an alias needs no second look.
  for (const match of source.matchAll(
    /\b(?:const (?:(\w+)(?:: \w+)?|\{([^{}]*)\}) = )?\b(\w+)((?:\s*\.\s*\w+|\["[\w-]+"\])*)(;?)/g,
  )) {
    const [, alias, parts, start = "", rest = "", end] = match;
    const base = short.get(start);
    if (base === undefined) continue;
    const path = `${base}.${rest.replaceAll(/\s/g, "").replaceAll(/\["([\w-]+)"\]/g, ".$1")}`
      .replaceAll(/\.+/g, ".")
      .replaceAll(/^\.|\.$/g, "");
    speakOf(path);
    // One of a section that is only chosen while the program runs may be any of it.
    if (source[match.index + match[0].length] === "[") found.add(`${path}.*`);
    if (alias !== undefined && end === ";") short.set(alias, path);
    for (const part of (parts ?? "").split(",").filter((each) => each.trim() !== "")) {
      const [name = "", other = name] = part.split(":").map((each) => each.trim());
      const inner = path === "" ? name : `${path}.${name}`;
      speakOf(inner);
      short.set(other, inner);
    }
  }
  return [...found];
};
