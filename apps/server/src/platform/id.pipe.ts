import { Injectable, type PipeTransform } from '@nestjs/common';
import { DomainError } from './domain-error.ts';

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;

/** An address that no record can have is simply not there. */
@Injectable()
export class IdPipe implements PipeTransform<unknown, string> {
  transform(value: unknown): string {
    if (typeof value === 'string' && UUID.test(value)) return value.toLowerCase();
    throw new DomainError('not-found', 'no-such-record', 'Nothing is on record under this address.');
  }
}
