import { dateText } from '../../../web/dates.ts';
import type { ProofDocument } from './proof-document.ts';

export interface ProofSheetView extends ProofDocument {
  title: string;
  version: number;
  made: string;
  hasColumns: boolean;
}

/** The printed sheet, from its frozen document alone. */
export function presentProofSheet(
  { version, madeAt, document }: { version: number; madeAt: Date; document: ProofDocument },
  timeZone: string,
): ProofSheetView {
  return {
    ...document,
    title: `Proof sheet, job ${document.job}, version ${version}`,
    version,
    made: dateText(madeAt, timeZone),
    hasColumns: document.columns.length > 0,
  };
}
