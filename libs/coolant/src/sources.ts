/** Where figures come from, as named beside a result. */
export const SOURCE = {
  freezing:
    'Freezing points: ASHRAE Handbook, Fundamentals (2001), as held in SecCool 1.33 and CoolProp; monotone interpolation in volume %.',
  density: 'Density: Å. Melinder, IIR 2010 (coefficients of CoolProp), scaled to 0.9982 kg/L for water at 20 °C.',
  ashraeDensity: 'Density for comparison: ASHRAE Handbook, Fundamentals (2001).',
  pureDensity: 'Density of the pure glycols at 20 °C: CRC Handbook of Chemistry and Physics (from memory).',
  properties: 'Heat capacity, conductivity, viscosity: Å. Melinder, IIR 2010 (coefficients of CoolProp).',
  saturation: 'Vapour pressure of water: IAPWS R7-97(2012), region 4.',
  glycolVapour: {
    ethylene: 'Vapour pressure of ethylene glycol: NIST Chemistry WebBook, Antoine equation.',
    propylene: 'Vapour pressure of propylene glycol: NIST Chemistry WebBook, Antoine equation (from memory).',
  },
  raoult: "Boiling of the mixture: Raoult's law.",
  atmosphere: 'Air pressure by altitude: US Standard Atmosphere 1976, the same as ISO 2533 here.',
  refraction: {
    ethylene: 'Refractive index: fit to the CRC Handbook of Chemistry and Physics, 102nd edition, 20 °C.',
    propylene: 'Refractive index: estimate by Lorentz-Lorenz mixing; no published table was found.',
  },
  brix: 'Brix scale: CRC Handbook of Chemistry and Physics, 102nd edition, sucrose at 20 °C.',
  strengthLimits: 'At least 33 % and at most 60 % of product: common practice, no source; the product label rules.',
  flush: 'Dilution: what stays after each exchange is (1 − drained ÷ system) of what was there.',
  scald: 'Safe to open at 50 °C: derived from published scald times (49 °C: 8 to 10 minutes; 55 °C: 17 to 30 seconds).',
  coldLevel: 'Cold for level within 8 K of the air: common practice, no source.',
  coldStart: 'Cold start within 6 K of the intake air: on-board diagnosis rules (second-hand).',
  cooling: "Newton's law of cooling.",
  tolerances: 'Tolerances of the fill account: common practice, no source; settings of the workshop.',
  technology: 'Technologies and service life: trade articles; no standard defines the classes. The vehicle maker rules.',
  water: 'Water: heavy-equipment operator manual, coolant mixing page; same figures as quoted from ASTM D4985 by an additive maker.',
} as const;
