import { type ValidationError, ValidationPipe } from '@nestjs/common';
import { cleanText } from './clean-text.ts';
import { DomainError, type FieldError } from './domain-error.ts';

function flatten(errors: readonly ValidationError[], prefix = ''): FieldError[] {
  return errors.flatMap((error) => {
    const field = prefix + cleanText(error.property);
    const [message] = Object.values(error.constraints ?? {});
    const own = message === undefined ? [] : [{ field, message: sayUnknown(error, message) }];
    return [...own, ...flatten(error.children ?? [], `${field}.`)];
  });
}

function sayUnknown(error: ValidationError, message: string): string {
  return error.constraints?.['whitelistValidation'] === undefined
    ? message
    : `There is no field “${cleanText(error.property).slice(0, 60)}” here: leave it out.`;
}

export function createValidationPipe(): ValidationPipe {
  return new ValidationPipe({
    whitelist: true,
    forbidNonWhitelisted: true,
    transform: true,
    stopAtFirstError: true,
    transformOptions: { exposeUnsetFields: false },
    exceptionFactory: (errors) => {
      const fields = flatten(errors);
      return new DomainError(
        'malformed',
        'fields',
        fields.length === 1 ? 'One answer needs another look.' : 'Some answers need another look.',
        {
          errors: fields,
        },
      );
    },
  });
}
