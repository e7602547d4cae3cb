/** Where a chart's title stands in its text, as offsets; null where it has none. */
export const titleRange = (text: string): { readonly from: number; readonly to: number } | null => {
  const found = /^(\s*Title:[ \t]*)(.*?)[ \t]*$/im.exec(text);
  if (!found) return null;
  const from = found.index + (found[1] ?? "").length;
  return { from, to: from + (found[2] ?? "").length };
};
