import type { FieldError } from '../../../platform/domain-error.ts';
import { cleanText } from '../../../platform/clean-text.ts';

export type TypedFields = Readonly<Record<string, unknown>>;

const FIGURE = /^[+-]?\d{1,9}([.,]\d{1,6})?$/;
const LONGEST = 2000;

/** What was typed into a form of the card, read field by field; what can't be read is collected beside its field. */
export class TypedForm {
  private readonly found: FieldError[] = [];

  constructor(private readonly fields: TypedFields) {}

  get errors(): readonly FieldError[] {
    return this.found;
  }

  wrong(field: string, message: string): void {
    if (!this.found.some((error) => error.field === field)) this.found.push({ field, message });
  }

  /** Trimmed; empty where nothing was typed. */
  text(field: string): string {
    const value = this.fields[field];
    return typeof value === 'string' ? cleanText(value.slice(0, LONGEST)).trim() : '';
  }

  needed(field: string, message: string): string {
    const text = this.text(field);
    if (text === '') this.wrong(field, message);
    return text;
  }

  isTicked(field: string): boolean {
    return this.text(field) !== '';
  }

  oneOf<T extends string>(field: string, choices: readonly T[], message: string): T | undefined {
    const found = choices.find((choice) => choice === this.text(field));
    if (found === undefined) this.wrong(field, message);
    return found;
  }

  /** A figure with point or comma; undefined where nothing was typed. */
  figure(field: string): number | undefined {
    const text = this.text(field).replaceAll('\u2212', '-').replaceAll(/\s/g, '');
    if (text === '') return undefined;
    if (!FIGURE.test(text)) {
      this.wrong(field, `“${text.slice(0, 20)}” is no figure: type digits, such as 47.5.`);
      return undefined;
    }
    return Number(text.replace(',', '.'));
  }

  neededFigure(field: string, what: string): number | undefined {
    const figure = this.figure(field);
    if (figure === undefined) this.wrong(field, `${what} needs a figure.`);
    return figure;
  }
}
