/**
 * Identifier of the rules a structured invoice follows (BT-24). The core of EN 16931 unless a receiver asks for a national
 * or network profile. Source: CEN examples and validation rules of EN 16931, read.
 */
const en16931Profile = 'urn:cen.eu:en16931:2017';

export interface XmlProfile {
  /** BT-24. */
  readonly customizationId: string;
  /** BT-23. */
  readonly processId?: string;
}

export const coreProfile: XmlProfile = { customizationId: en16931Profile };
