export { checkVin, type VinCheck } from './check-vin.ts';
export { type VinRegion } from './vin-region.ts';
