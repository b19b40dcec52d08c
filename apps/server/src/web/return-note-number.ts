/** As it stands on the paper in the box. @example returnNoteNumber(42) // 'RN-0042' */
export const returnNoteNumber = (number: number): string => `RN-${String(number).padStart(4, '0')}`;
