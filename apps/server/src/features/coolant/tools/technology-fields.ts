import { type CoolantTechnology, TECHNOLOGIES } from '#libs/coolant';
import type { Option } from '../../../web/form-field.ts';

const KEYS = ['inorganic', 'organic', 'hybrid', 'phosphated-hybrid', 'silicated-organic'] as const satisfies readonly CoolantTechnology[];

export const TECHNOLOGY_OPTIONS: readonly Option[] = KEYS.map((value) => ({
  value,
  label: `${TECHNOLOGIES[value].abbreviation}: ${TECHNOLOGIES[value].name}`,
}));

export const technologyOf = (text: string | undefined): CoolantTechnology | undefined => KEYS.find((key) => key === text);
