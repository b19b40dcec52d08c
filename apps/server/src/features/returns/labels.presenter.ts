import { plainDate } from '../../web/dates.ts';
import { qrCode } from '../../web/qr-code.ts';
import type { Unit } from './units.repository.ts';

/** More than these fill a document that nobody wants printed at once. */
const MOST = 240;

export interface LabelsView {
  title: string;
  labels: { code: string; qr: string; part: string; name: string; supplier: string; back: string; whose: string; warning: string }[];
}

/** The code for the scanner and for typing, what is in the box, and by when it has to leave. */
export function presentLabels(units: readonly Unit[]): LabelsView {
  return {
    title: units.length === 1 ? `Label ${units[0]?.label ?? ''}` : 'Labels',
    labels: units.slice(0, MOST).map((unit) => ({
      code: unit.label,
      qr: qrCode(unit.code),
      part: unit.variant.partNumber,
      name: unit.variant.name,
      supplier: unit.variant.supplier.name,
      back: unit.returnBy ? `back by ${plainDate(unit.returnBy)}` : '',
      whose: unit.whose,
      warning: unit.variant.supplier.unopenedOnly && !unit.isOpened ? 'Goes back unopened only' : '',
    })),
  };
}
