/** Inhibitor technologies of coolants. Trade convention: no standard defines the classes. */
export type CoolantTechnology = 'inorganic' | 'organic' | 'hybrid' | 'phosphated-hybrid' | 'silicated-organic';

export interface TechnologyFacts {
  /** As the trade abbreviates it. */
  readonly abbreviation: string;
  readonly name: string;
  readonly inhibitors: string;
  readonly serviceYears: number;
  /** Null where no distance was found. */
  readonly serviceKm: number | null;
  /** Where the service life comes from. */
  readonly basis: 'read' | 'from memory';
}

/**
 * What is known of the technologies.
 *
 * Sources: class descriptions and life of the inorganic and organic kinds from a marine trade forum's technical note
 * (read: 2 years or 50 000 km, 5 years or 250 000 km); hybrid kinds' life from memory. Colours are left out on purpose:
 * dye is the maker's choice.
 */
export const TECHNOLOGIES: Readonly<Record<CoolantTechnology, TechnologyFacts>> = {
  inorganic: {
    abbreviation: 'IAT',
    name: 'inorganic additive technology',
    inhibitors: 'silicates, phosphates or borates, in some nitrite; used up fast',
    serviceYears: 2,
    serviceKm: 50000,
    basis: 'read',
  },
  organic: {
    abbreviation: 'OAT',
    name: 'organic acid technology',
    inhibitors: 'carboxylates; no silicate, phosphate, borate or nitrite',
    serviceYears: 5,
    serviceKm: 250000,
    basis: 'read',
  },
  hybrid: {
    abbreviation: 'HOAT',
    name: 'hybrid organic acid technology',
    inhibitors: 'carboxylates with a little silicate, in some nitrite or phosphate',
    serviceYears: 5,
    serviceKm: null,
    basis: 'from memory',
  },
  'phosphated-hybrid': {
    abbreviation: 'P-HOAT',
    name: 'phosphated hybrid organic acid technology',
    inhibitors: 'carboxylates with phosphate, free of silicate; sensitive to hard water',
    serviceYears: 5,
    serviceKm: null,
    basis: 'from memory',
  },
  'silicated-organic': {
    abbreviation: 'Si-OAT',
    name: 'silicated organic acid technology',
    inhibitors: 'carboxylates with stabilised silicate',
    serviceYears: 5,
    serviceKm: null,
    basis: 'from memory',
  },
};
