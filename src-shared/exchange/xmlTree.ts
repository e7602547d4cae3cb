import { XMLBuilder } from "fast-xml-parser";

/** An element of an XML document. It has children or a text, not both. */
export type XmlElement = {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly XmlElement[];
  /** Trimmed; empty where there are children. */
  readonly text: string;
};

/** What `element` takes: elements, a text or number, or null for what is left out. */
export type XmlContent = XmlElement | readonly XmlElement[] | string | number | null;

/**
 * An element from its parts; null and empty lists are left out.
 * @example element("fret", {}, 7) // => { name: "fret", attributes: {}, children: [], text: "7" }
 */
export const element = (
  name: string,
  attributes: Readonly<Record<string, string | number>> = {},
  ...content: readonly XmlContent[]
): XmlElement => {
  const children: XmlElement[] = [];
  let text = "";
  for (const each of content) {
    if (typeof each === "string" || typeof each === "number") {
      text += each;
    } else if (each !== null) {
      children.push(...("name" in each ? [each] : each));
    }
  }
  const named = Object.entries(attributes).map(([key, value]) => [key, String(value)] as const);
  return { name, attributes: Object.fromEntries(named), children, text };
};

/** The first child of that name, or null. */
export const childOf = (parent: XmlElement, name: string): XmlElement | null =>
  parent.children.find((child) => child.name === name) ?? null;

/** All children of that name. */
export const childrenOf = (parent: XmlElement, name: string): readonly XmlElement[] =>
  parent.children.filter((child) => child.name === name);

/** The text of the element that a path of names leads to, or null where there is none. */
export const textAt = (parent: XmlElement, ...path: readonly string[]): string | null => {
  let at: XmlElement | null = parent;
  for (const name of path) {
    at = at && childOf(at, name);
  }
  return at?.text ?? null;
};

/** What XML 1.0 allows in a text: no control characters but tab and line ends, no lone surrogates. */
const allowed = (text: string): string =>
  text.replace(/[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu, "");

type Ordered = Readonly<Record<string, unknown>>;

const ordered = ({ name, attributes, children, text }: XmlElement): Ordered => {
  const entries = Object.entries(attributes).map(([key, value]) => [`@_${key}`, allowed(value)]);
  const content = text === "" ? children.map(ordered) : [{ "#text": allowed(text) }];
  return { [name]: content, ":@": Object.fromEntries(entries) };
};

const builder: XMLBuilder = new XMLBuilder({
  preserveOrder: true,
  ignoreAttributes: false,
  format: true,
  indentBy: " ",
  suppressEmptyNode: true,
  suppressBooleanAttributes: false,
});

/** A document in UTF-8: declaration and root element. */
export const writeXml = (root: XmlElement): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n${builder.build([ordered(root)]).trim()}\n`;
