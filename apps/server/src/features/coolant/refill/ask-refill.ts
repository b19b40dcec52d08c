import type { BenchContext } from '../bench-context.ts';
import type { ReadForm } from '../form/bench-field.ts';
import type { FieldGroup } from '../form/field-group.ts';
import { type Query, readBenchForm } from '../form/read-bench-form.ts';
import { reckonRefill, type RefillAnswer } from './reckon-refill.ts';
import type { KnownFigures } from './known.ts';
import { refillGroups } from './refill-fields.ts';

export interface AskedRefill {
  readonly groups: readonly FieldGroup[];
  readonly form: ReadForm;
  readonly answer: RefillAnswer;
}

/** The refill as an address asks for it, with what is known where it says nothing. */
export function askRefill(context: BenchContext, known: KnownFigures, typed: Query): AskedRefill {
  const groups = refillGroups(context, known);
  const form = readBenchForm(
    groups.flatMap(({ fields }) => fields),
    typed,
    context.units,
  );
  return { groups, form, answer: reckonRefill(form, context.products) };
}
