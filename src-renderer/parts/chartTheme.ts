import type { Extension } from "@codemirror/state";
import { EditorView } from "@codemirror/view";

const marked = (colour: string): Record<string, string> => ({
  backgroundImage: "none",
  textDecoration: `underline wavy ${colour} var(--stroke-2)`,
  textUnderlineOffset: "var(--space-1)",
});

/** The editor in the tokens of the theme, so that light and dark follow the page. */
export const chartTheme: Extension = EditorView.theme({
  "&": { height: "100%", backgroundColor: "var(--paper-raised)", color: "var(--ink)" },
  "&.cm-focused": { outline: "none" },
  ".cm-scroller": {
    fontFamily: "var(--font-chart)",
    fontSize: "var(--text-15)",
    lineHeight: "1.6",
    overflow: "auto",
  },
  ".cm-content": { padding: "var(--space-3) 0", caretColor: "var(--ink)" },
  ".cm-line": { padding: "0 var(--space-3)" },
  ".cm-gutters": { border: "0", backgroundColor: "transparent", color: "var(--ink-soft)" },
  ".cm-gutterElement": { fontSize: "var(--text-13)", lineHeight: "calc(var(--text-15) * 1.6)" },
  ".cm-activeLine": { backgroundColor: "transparent" },
  "&.cm-focused .cm-activeLine": { backgroundColor: "var(--paper-sunk)" },
  "& .cm-lintRange-error": marked("var(--error)"),
  "& .cm-lintRange-hint": marked("var(--next)"),
  ".cm-lintPoint-error::after": { borderBottomColor: "var(--error)" },
  ".cm-tooltip": {
    maxWidth: "var(--drawer)",
    border: "var(--stroke) solid var(--line)",
    borderRadius: "var(--radius)",
    backgroundColor: "var(--paper-raised)",
    color: "var(--ink)",
  },
  ".cm-diagnostic": { padding: "var(--space-2) var(--space-3)", fontFamily: "var(--font)" },
  ".cm-diagnostic-error": { borderLeft: "var(--stroke-3) solid var(--error)" },
  ".cm-diagnostic-hint": { borderLeft: "var(--stroke-3) solid var(--next)" },

  ".chart-header-name": { color: "var(--ink-soft)" },
  ".chart-label": { color: "var(--next)", fontWeight: "var(--weight-strong)" },
  ".chart-bar-line": { color: "var(--ink-soft)" },
  ".chart-ending": { color: "var(--next)" },
  ".chart-comment": { color: "var(--ink-soft)", fontStyle: "italic" },
});
