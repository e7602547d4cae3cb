import { XMLParser, XMLValidator } from "fast-xml-parser";
import { type Refusal, refuse } from "../harmony/refusal.ts";
import { words } from "../wordTable.ts";
import type { XmlElement } from "./xmlTree.ts";

/** A document's root element, or why it cannot be read. */
export type XmlReading = { readonly ok: true; readonly root: XmlElement } | Refusal;

/** MusicXML nests about a dozen deep. */
const MAX_DEPTH = 64;

/** Tags (a start and an end are two) and attributes of a file, as what reading costs. */
const MAX_MARKS = 400_000;

const marksIn = (text: string): number => {
  let marks = 0;
  for (const mark of ["<", "="]) {
    for (
      let at = text.indexOf(mark);
      at >= 0 && marks <= MAX_MARKS;
      at = text.indexOf(mark, at + 1)
    ) {
      marks += 1;
    }
  }
  return marks;
};

const parser: XMLParser = new XMLParser({
  preserveOrder: true,
  ignoreAttributes: false,
  attributeNamePrefix: "",
  parseTagValue: false,
  parseAttributeValue: false,
  processEntities: false,
  ignoreDeclaration: true,
  ignorePiTags: true,
  maxNestedTags: MAX_DEPTH + 1,
});

const named: Readonly<Record<string, string>> = {
  lt: "<",
  gt: ">",
  amp: "&",
  quot: '"',
  apos: "'",
};

const LAST_CHARACTER = 0x10ffff;

/** The five entities of XML and character numbers; any other stays as it is written. */
const plainText = (text: string): string =>
  text.replace(/&(?:#(\d{1,7})|#x([\da-f]{1,6})|(lt|gt|amp|quot|apos));/gi, (all, ...groups) => {
    const [decimal, hex, name] = groups;
    if (name !== undefined) {
      return named[String(name).toLowerCase()] ?? all;
    }
    const code = decimal === undefined ? Number.parseInt(hex, 16) : Number(decimal);
    return code <= LAST_CHARACTER ? String.fromCodePoint(code) : all;
  });

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const attributesOf = (node: Readonly<Record<string, unknown>>): Record<string, string> => {
  const given = node[":@"];
  return isRecord(given)
    ? Object.fromEntries(Object.entries(given).map(([key, value]) => [key, plainText(`${value}`)]))
    : {};
};

/** The elements of a parsed list, and the texts between them; as deep as the parser let through. */
const contentOf = (list: unknown): { readonly children: XmlElement[]; readonly text: string } => {
  const children: XmlElement[] = [];
  let text = "";
  for (const node of Array.isArray(list) ? list : []) {
    if (!isRecord(node)) {
      continue;
    }
    const name = Object.keys(node).find((key) => key !== ":@");
    if (name === "#text") {
      text += `${node[name]}`;
    } else if (name !== undefined) {
      children.push({ name, attributes: attributesOf(node), ...contentOf(node[name]) });
    }
  }
  return { children, text: plainText(text).trim() };
};

/** The parser's words may quote a whole broken tag. */
const MOST_QUOTED = 120;

const SAVE_AGAIN = words.import.xml.try;

/**
 * Reads an XML document. A document type that declares anything of its own is refused, no entity but
 * XML's five is expanded, and nothing is nested deeper than 64; a file of more than
 * 400,000 tags and attributes is refused.
 */
export const readXml = (text: string): XmlReading => {
  const doctype = /<!DOCTYPE[^>[]*(\[?)/i.exec(text);
  if (doctype?.[1] === "[" || /<!(?:ENTITY|ELEMENT|ATTLIST|NOTATION)/i.test(text)) {
    return refuse(words.import.xml.entities, SAVE_AGAIN);
  }
  if (marksIn(text) > MAX_MARKS) {
    return refuse(words.import.xml.manyTags(MAX_MARKS), words.import.xml.manyTagsTry);
  }
  const valid = XMLValidator.validate(text);
  if (valid !== true) {
    const { line, col, msg } = valid.err;
    return refuse(words.import.xml.broken(line, col, msg.slice(0, MOST_QUOTED)), SAVE_AGAIN);
  }
  try {
    const root = contentOf(parser.parse(text)).children[0];
    return root === undefined ? refuse(words.import.xml.noElement, SAVE_AGAIN) : { ok: true, root };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return refuse(words.import.xml.says(why.slice(0, MOST_QUOTED)), SAVE_AGAIN);
  }
};
