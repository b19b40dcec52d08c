/** The two glycols that engine coolants are made of. */
export type Glycol = 'ethylene' | 'propylene';

/** How a glycol is named in a sentence. */
export const GLYCOL_NAME: Readonly<Record<Glycol, string>> = {
  ethylene: 'ethylene glycol',
  propylene: 'propylene glycol',
};
