import type { UnitPreference } from '#libs/units';
import type { Workshop } from '../../platform/workshop-facts.ts';
import type { ShelfProduct } from '../coolant-shelf/coolant-shelf.service.ts';

/** What every page of the bench is reckoned with, beside its form. */
export interface BenchContext {
  readonly workshop: Workshop;
  readonly products: readonly ShelfProduct[];
  readonly units: UnitPreference;
  /** Day at the workshop, year-month-day. */
  readonly today: string;
}
