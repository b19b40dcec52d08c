import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** All words of a PDF, read back by another program than the one that made it. */
export async function textOfPdf(pdf: Uint8Array): Promise<string> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  const pages = await Promise.all(
    Array.from({ length: document.numPages }, async (_, index) => (await document.getPage(index + 1)).getTextContent()),
  );
  await document.destroy();
  return pages.flatMap(({ items }) => items.map((item) => ('str' in item ? item.str : ''))).join(' ');
}
