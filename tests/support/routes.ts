import 'reflect-metadata';
import { RequestMethod } from '@nestjs/common';
import { ModulesContainer } from '@nestjs/core';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { ACCESS, type Access, WITHOUT_KEY } from '../../apps/server/src/platform/access/access.decorator.ts';

export interface Route {
  method: string;
  /** With its parameters, as `/till/jobs/:id`. */
  path: string;
}

/** A handler of a controller, with what it says of itself. */
export interface DeclaredRoute extends Route {
  access: Access | undefined;
  withoutKey: boolean;
  /** Names of the query parameters that it reads. */
  queries: readonly string[];
}

const QUERY_PARAMETER = 4; // of Nest's RouteParamtypes, which it does not export

const join = (...parts: string[]): string => `/${parts.flatMap((part) => part.split('/').filter(Boolean)).join('/')}`;

/** Every handler that Nest has mapped. */
export function declaredRoutes(app: NestFastifyApplication): DeclaredRoute[] {
  const controllers = [...app.get(ModulesContainer, { strict: false }).values()].flatMap((module) => [...module.controllers.values()]);
  return controllers.flatMap(({ metatype }) => {
    const type = metatype as { prototype: Record<string, unknown> };
    return Object.getOwnPropertyNames(type.prototype).flatMap((name) => {
      const handler = name === 'constructor' ? undefined : type.prototype[name];
      if (typeof handler !== 'function' || !Reflect.hasMetadata('method', handler)) return [];
      const read = <T>(key: unknown): T | undefined =>
        (Reflect.getMetadata(key, handler) ?? Reflect.getMetadata(key, type)) as T | undefined;
      const path = join(String(Reflect.getMetadata('path', type)), String(Reflect.getMetadata('path', handler)));
      const parameters = (Reflect.getMetadata('__routeArguments__', type, name) ?? {}) as Record<string, { data?: unknown }>;
      return {
        method: RequestMethod[Reflect.getMetadata('method', handler) as RequestMethod],
        path,
        access: read<Access>(ACCESS),
        withoutKey: read<boolean>(WITHOUT_KEY) === true,
        queries: Object.entries(parameters)
          .filter(([key, { data }]) => key.startsWith(`${QUERY_PARAMETER}:`) && typeof data === 'string')
          .map(([, { data }]) => String(data)),
      };
    });
  });
}

/** Every route that Fastify answers, whoever put it there: read from its printed tree. */
export function registeredRoutes(app: NestFastifyApplication): Route[] {
  const above: string[] = [];
  return app
    .getHttpAdapter()
    .getInstance()
    .printRoutes({ commonPrefix: true })
    .split('\n')
    .flatMap((line) => {
      const match = /^([│ ├└─]*)(.*?)(?: \(([A-Z, ]+)\))?$/.exec(line);
      if (!match || match[2] === '') return [];
      const depth = (match[1] ?? '').length / 4;
      above.splice(depth - 1, above.length, match[2] ?? '');
      const path = above.join('');
      return (match[3] ?? '')
        .split(', ')
        .filter(Boolean)
        .map((method) => ({ method, path }));
    });
}

/** An address of the route, with the same nothing for each of its parameters. */
export const addressOf = ({ path }: Route, id = '00000000-0000-7000-8000-000000000000'): string => path.replaceAll(/:[^/]+/g, id);

/** Told apart from another route whatever its parameters are called. */
export const routeKey = ({ method, path }: Route): string => `${method} ${path.replaceAll(/:[^/]+/g, ':')}`;

export const isApi = ({ path }: Route): boolean => path.startsWith('/api/');
export const changesState = ({ method }: Route): boolean => method !== 'GET' && method !== 'HEAD';
