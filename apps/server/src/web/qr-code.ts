import { renderSVG } from 'uqr';

/** A code of squares for a scanner, as SVG text; black on white, four squares of margin. Medium error correction: a label gets scratched. */
export const qrCode = (text: string): string => renderSVG(text, { ecc: 'M', border: 4 });
