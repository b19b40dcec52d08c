import type { BenchField } from './bench-field.ts';

/** One part of a form; folded parts hold what the workshop's settings answer. */
export interface FieldGroup {
  readonly title: string;
  readonly isFolded: boolean;
  readonly fields: readonly BenchField[];
}

/** A form that needs no parts. */
export const plainGroup = (fields: readonly BenchField[]): readonly FieldGroup[] => [{ title: '', isFolded: false, fields }];
