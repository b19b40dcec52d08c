import { describe, expect, it } from '@jest/globals';
import { Prisma } from '#libs/db';
import { faultLine } from './fault-line.ts';

describe('faultLine', () => {
  it('tells code, model and place of a database error, and none of its values', () => {
    const error = new Prisma.PrismaClientKnownRequestError('Unique constraint: Key (name)=(Odile Quill) exists', {
      code: 'P2002',
      clientVersion: '7',
      meta: { modelName: 'Customer', driverAdapterError: { cause: { kind: 'x', originalCode: '23505', originalMessage: 'Odile Quill' } } },
    });
    const line = faultLine(error);
    expect(line).toMatch(/^PrismaClientKnownRequestError P2002 Customer 23505\n\s+at /);
    expect(line).not.toContain('Odile');
  });

  it('tells of a value of many lines nothing either', () => {
    const error = new Prisma.PrismaClientValidationError('Invalid invocation:\n  name: "Odile Quill",\n  at: Lark Row', {
      clientVersion: '7',
    });
    expect(faultLine(error)).not.toMatch(/Odile|Lark/);
  });

  it('tells all of our own', () => {
    expect(faultLine(new Error('half way'))).toMatch(/^Error: half way\n\s+at /);
    expect(faultLine('thrown text')).toBe('thrown text');
  });
});
