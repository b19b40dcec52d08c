/**
 * What a bolt of each thread in a cooling-system housing usually takes, in Nm: outside it the entry is looked at again.
 * Never a specification: the vehicle maker's manual gives the value. Bounds for coolant housings in aluminium or plastic are
 * from memory; bolt tables of class 8.8 (M6 about 9 to 11, M8 about 21 to 28, M10 about 42 to 55 Nm) lie beside them.
 */
export const THREAD_RANGES: Readonly<Record<string, { readonly lowNm: number; readonly highNm: number }>> = {
  M6: { lowNm: 4, highNm: 15 },
  M8: { lowNm: 8, highNm: 35 },
  M10: { lowNm: 8, highNm: 70 },
};

/** Thread not told: from the smallest bound to the largest. */
export const ANY_THREAD = { lowNm: 4, highNm: 70 };
