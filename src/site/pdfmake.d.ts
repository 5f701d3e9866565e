/** The part of pdfmake that is used; the package brings no types. */
declare module 'pdfmake' {
  interface PdfMaker {
    setFonts(fonts: Readonly<Record<string, Readonly<Record<string, string>>>>): void;
    setUrlAccessPolicy(allows: (address: string) => boolean): void;
    setLocalAccessPolicy(allows: (path: string) => boolean): void;
    createPdf(document: Readonly<Record<string, unknown>>): { getBuffer(): Promise<Buffer> };
  }
  const maker: PdfMaker;
  export default maker;
}
