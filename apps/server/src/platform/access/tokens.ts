import { createHash, randomBytes } from 'node:crypto';
import { Tokens } from '@fastify/csrf';

const tokens = new Tokens({});

/** What only its holder's cookie knows; the database keeps the hash. */
export function newToken(): string {
  return randomBytes(32).toString('base64url');
}

export function hashToken(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}

export const newCsrfSecret = (): string => tokens.secretSync();
export const csrfToken = (secret: string): string => tokens.create(secret);
export const isCsrfToken = (secret: string, token: unknown): boolean => typeof token === 'string' && tokens.verify(secret, token);
