/**
 * Coefficients of the saturation curve of water.
 *
 * Source: IAPWS R7-97(2012), Revised Release on the IAPWS Industrial Formulation 1997, Table 34. Read in several public
 * implementations; IAPWS permits publication with attribution.
 */
export const IF97_REGION4 = {
  n1: 1167.0521452767,
  n2: -724213.16703206,
  n3: -17.073846940092,
  n4: 12020.82470247,
  n5: -3232555.0322333,
  n6: 14.91510861353,
  n7: -4823.2657361591,
  n8: 405113.40542057,
  n9: -0.23855557567849,
  n10: 650.17534844798,
} as const;
