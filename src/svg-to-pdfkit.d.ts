/** The one call of svg-to-pdfkit, which comes without types. */
declare module 'svg-to-pdfkit' {
  /** How an SVG is put on a page; lengths are points if `assumePt` is set. */
  export interface SvgOptions {
    readonly assumePt?: boolean;
    readonly width?: number;
    readonly height?: number;
    readonly preserveAspectRatio?: string;
    /** Answers with the name of a registered font. */
    readonly fontCallback?: (family: string, bold: boolean, italic: boolean) => string;
    readonly warningCallback?: (warning: string) => void;
  }

  /** Draws an SVG on the present page of a document, with its upper left corner at `x`, `y`. */
  export default function drawSvg(
    page: PDFKit.PDFDocument,
    svg: string,
    x?: number,
    y?: number,
    options?: SvgOptions
  ): void;
}
