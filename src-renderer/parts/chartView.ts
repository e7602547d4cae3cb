import { standardKeymap } from "@codemirror/commands";
import {
  type Diagnostic as LintDiagnostic,
  nextDiagnostic,
  setDiagnostics,
} from "@codemirror/lint";
import { Annotation, EditorState, type Extension, type Text } from "@codemirror/state";
import { EditorView, highlightActiveLine, keymap, lineNumbers } from "@codemirror/view";
import type { Diagnostic, TextPlace } from "../../src-shared/diagnostic.ts";
import { difference } from "../geometry/difference.ts";
import { chartTheme } from "./chartTheme.ts";
import { chartTint } from "./chartTint.ts";

/** What the editor tells. Undo and redo are the song's own: text and settings in one history. */
export type ChartViewEvents = {
  readonly onEdit: (text: string) => void;
  /** Where the cursor is, in characters from the start; with every move and every edit. */
  readonly onCursor: (offset: number) => void;
  readonly onUndo: () => void;
  readonly onRedo: () => void;
};

/** A chart being edited on the page. */
export type ChartView = {
  /** Takes on a text changed from outside; the cursor goes to the change. */
  readonly show: (text: string) => void;
  readonly mark: (notes: readonly Diagnostic[]) => void;
  readonly jumpTo: (place: TextPlace) => void;
  /** Selects from one offset to another, and takes the focus. */
  readonly select: (from: number, to: number) => void;
  readonly dispose: () => void;
};

const fromOutside = Annotation.define<true>();

const rangeOf = (doc: Text, { line, column, length }: TextPlace): { from: number; to: number } => {
  const { from: start } = doc.line(Math.min(Math.max(line, 1), doc.lines));
  const from = Math.min(start + column - 1, doc.length);
  return { from, to: Math.min(from + length, doc.length) };
};

const lintOf = (doc: Text, note: Diagnostic): LintDiagnostic => ({
  ...rangeOf(doc, note.at),
  severity: note.severity,
  message: `${note.says} ${note.try}`,
});

const historyKeys = ({ onUndo, onRedo }: ChartViewEvents): Extension => {
  const run = (step: () => void) => () => {
    step();
    return true;
  };
  return [
    keymap.of([
      { key: "Mod-z", run: run(onUndo), preventDefault: true },
      { key: "Mod-y", mac: "Mod-Shift-z", run: run(onRedo), preventDefault: true },
      { linux: "Ctrl-Shift-z", run: run(onRedo), preventDefault: true },
    ]),
    EditorView.domEventHandlers({
      beforeinput: (event) => {
        if (event.inputType !== "historyUndo" && event.inputType !== "historyRedo") return false;
        event.preventDefault();
        if (event.inputType === "historyUndo") onUndo();
        else onRedo();
        return true;
      },
    }),
  ];
};

/** Makes the editor inside `parent`. */
export const makeChartView = (
  parent: HTMLElement,
  text: string,
  label: string,
  events: ChartViewEvents,
): ChartView => {
  const view = new EditorView({
    parent,
    state: EditorState.create({
      doc: text,
      extensions: [
        historyKeys(events),
        keymap.of([{ key: "F8", run: nextDiagnostic }, ...standardKeymap]),
        lineNumbers(),
        highlightActiveLine(),
        EditorView.lineWrapping,
        EditorView.contentAttributes.of({ "aria-label": label, spellcheck: "false" }),
        EditorView.updateListener.of((update) => {
          const ours = update.transactions.some((change) => change.annotation(fromOutside));
          if (update.docChanged && !ours) events.onEdit(update.state.doc.toString());
          if (update.selectionSet || update.docChanged) {
            events.onCursor(update.state.selection.main.head);
          }
        }),
        chartTint,
        chartTheme,
      ],
    }),
  });

  const select = (anchor: number, head: number): void => {
    view.focus();
    view.dispatch({
      selection: { anchor, head },
      effects: EditorView.scrollIntoView(anchor, { y: "center" }),
    });
  };

  return {
    show: (next) => {
      const current = view.state.doc.toString();
      if (next === current) return;
      const { from, removed, inserted } = difference(current, next);
      view.dispatch({
        changes: { from, to: from + removed.length, insert: inserted },
        selection: { anchor: from + inserted.length },
        annotations: fromOutside.of(true),
        scrollIntoView: true,
      });
    },
    mark: (notes) => {
      const { doc } = view.state;
      view.dispatch(
        setDiagnostics(
          view.state,
          notes.map((note) => lintOf(doc, note)),
        ),
      );
    },
    jumpTo: (place) => {
      const { from, to } = rangeOf(view.state.doc, place);
      select(from, to);
    },
    select,
    dispose: () => view.destroy(),
  };
};
