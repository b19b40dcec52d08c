import { UnsupportedMediaTypeException } from '@nestjs/common';
import type { FastifyInstance } from 'fastify';
import { isApi } from '../access/check-origin.ts';
import { SESSION_COOKIE, type Sessions } from '../access/sessions.ts';
import { DomainError } from '../domain-error.ts';
import { readMultipart } from './read-multipart.ts';
import { setRequestFiles } from './request-files.ts';
import { fileLimitsIn, fileLimitsOf } from './takes-files.decorator.ts';

/**
 * Files come in where a route says so, and large bodies only for whoever is signed in: nobody else's are held in memory.
 * The fields become the body, as of any other form, so that the marks of a form are proven in the one place.
 */
export function registerUploads(fastify: FastifyInstance, sessions: Sessions): void {
  const signedIn = new WeakSet<object>();
  fastify.addHook('onRoute', (route) => {
    const { mostJsonBytes } = fileLimitsIn(route.config) ?? {};
    if (mostJsonBytes !== undefined) route.bodyLimit = mostJsonBytes;
  });
  fastify.addHook('onRequest', async (request) => {
    if (!fileLimitsOf(request)) return;
    const token = request.cookies[SESSION_COOKIE];
    if (token !== undefined && (await sessions.find(token))) signedIn.add(request.raw);
    else if (isApi(request)) throw new DomainError('not-signed-in', 'not-signed-in', 'Sign in first.');
  });
  fastify.addHook('preValidation', async (request) => {
    if (!request.isMultipart()) return;
    const limits = fileLimitsOf(request);
    if (!limits) throw new UnsupportedMediaTypeException('Files are not taken here: send the answers alone.');
    const { fields, files, problem } = await readMultipart(request, { limits, keepsFiles: signedIn.has(request.raw) });
    request.body = fields;
    setRequestFiles(request, { files, problem });
  });
}
