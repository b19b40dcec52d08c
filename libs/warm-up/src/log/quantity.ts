/** What a column of a log can tell. */
export type Quantity = 'coolant' | 'intake' | 'ambient' | 'speed' | 'rpm' | 'load' | 'airFlow';

export const QUANTITIES: readonly Quantity[] = ['coolant', 'intake', 'ambient', 'speed', 'rpm', 'load', 'airFlow'];

/** In words for the person. */
export const QUANTITY_NAMES: Readonly<Record<Quantity, string>> = {
  coolant: 'coolant temperature',
  intake: 'intake air temperature',
  ambient: 'outside air temperature',
  speed: 'road speed',
  rpm: 'engine speed',
  load: 'engine load',
  airFlow: 'air flow',
};
