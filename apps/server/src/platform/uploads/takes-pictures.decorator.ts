import { RouteConfig } from '@nestjs/platform-fastify';
import type { FastifyInstance, FastifyRequest } from 'fastify';

/** A call whose body is one picture and nothing else. Its handler reads the bytes itself, once it is known who sends them. */
export const TakesPictures = (): MethodDecorator => RouteConfig({ takesPictures: true });

export const takesPictures = (request: FastifyRequest): boolean =>
  (request.routeOptions.config as { takesPictures?: boolean }).takesPictures === true;

/** Leaves pictures in the request unread: nobody's bytes are held in memory before the guard has let them in. */
export function registerPictureBodies(fastify: FastifyInstance): void {
  fastify.addContentTypeParser(/^image\//, (_request, _payload, done) => done(null, undefined));
}
