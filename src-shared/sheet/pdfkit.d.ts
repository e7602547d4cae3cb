/** What is used of pdfkit 0.20; the types published for it need those of a machine. */
declare module "pdfkit" {
  type Outline = {
    addItem(
      title: string,
      options: { readonly expanded: boolean; readonly pageNumber?: number },
    ): Outline;
  };
  type Options = {
    readonly size: readonly [number, number];
    readonly margin: number;
    readonly font: null;
    readonly autoFirstPage: boolean;
    readonly bufferPages: boolean;
    readonly pdfVersion: string;
    readonly lang: string;
    readonly displayTitle: boolean;
    readonly info: Readonly<Record<string, string | Date>>;
  };
  class PDFDocument {
    constructor(options: Options);
    readonly outline: Outline;
    on(event: "data", take: (chunk: Uint8Array) => void): this;
    on(event: "end", done: () => void): this;
    on(event: "error", failed: (reason: unknown) => void): this;
    addPage(): this;
    switchToPage(page: number): unknown;
    registerFont(name: string, bytes: Uint8Array): this;
    font(name: string): this;
    fontSize(size: number): this;
    fillColor(grey: readonly [number, number, number]): this;
    strokeColor(grey: readonly [number, number, number]): this;
    lineWidth(width: number): this;
    lineCap(cap: "round" | "butt"): this;
    lineJoin(join: "round" | "miter"): this;
    path(d: string): this;
    fill(): this;
    stroke(): this;
    fillAndStroke(): this;
    text(
      text: string,
      x: number,
      y: number,
      options: { readonly lineBreak: false; readonly baseline: "alphabetic" },
    ): this;
    goTo(x: number, y: number, width: number, height: number, name: string): this;
    addNamedDestination(name: string, fit: "Fit"): void;
    end(): void;
  }
  export = PDFDocument;
}
