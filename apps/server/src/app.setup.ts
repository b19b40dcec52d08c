import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import fastifyCompress from '@fastify/compress';
import fastifyCookie from '@fastify/cookie';
import fastifyHelmet from '@fastify/helmet';
import fastifyMultipart from '@fastify/multipart';
import fastifyStatic from '@fastify/static';
import fastifyView from '@fastify/view';
import { NestFactory } from '@nestjs/core';
import { FastifyAdapter, type NestFastifyApplication } from '@nestjs/platform-fastify';
import { DocumentBuilder, SwaggerModule } from '@nestjs/swagger';
import { AppModule } from './app.module.ts';
import openapiMetadata from './openapi-metadata.ts';
import { registerAccessHooks } from './platform/access/access.hooks.ts';
import { Sessions } from './platform/access/sessions.ts';
import { Flashes } from './platform/pages/flash.ts';
import type { PlatformOptions } from './platform/platform.module.ts';
import { registerPictureBodies } from './platform/uploads/takes-pictures.decorator.ts';
import { registerUploads } from './platform/uploads/uploads.hooks.ts';
import { createValidationPipe } from './platform/validation.ts';
import { createHandlebars } from './web/handlebars.ts';
import { VIEW_NAMES } from './web/page.ts';
import { registerShellHooks } from './web/shell.hooks.ts';

export interface AppOptions extends PlatformOptions {
  /** The built assets and their manifest. */
  publicDir: string;
  production: boolean;
  trustProxy?: boolean;
  isDemo?: boolean;
  logger?: false;
}

const root = import.meta.dirname;

/** The application without a listening port, as `main.ts` and the tests use it. */
export async function createApp(options: AppOptions): Promise<NestFastifyApplication> {
  const adapter = new FastifyAdapter({
    forceCloseConnections: true,
    bodyLimit: 256 * 1024,
    trustProxy: options.trustProxy ?? false,
    routerOptions: { maxParamLength: 200 },
  });
  const app = await NestFactory.create<NestFastifyApplication>(AppModule.with(options), adapter, {
    logger: options.logger ?? ['error', 'warn'],
    forceCloseConnections: true,
  });
  // Before the routes it is for. Brotli made on the fly is no smaller than gzip here; form tokens are salted anew on every page.
  await app.register(fastifyCompress, { encodings: ['gzip'] });
  await registerSecurity(app);
  await registerViews(app, options);
  await registerFiles(app, options.publicDir);
  // A file over its limit is told of by us, beside its field.
  await app.register(fastifyMultipart, { throwFileSizeLimit: false });
  const fastify = app.getHttpAdapter().getInstance();
  registerUploads(fastify, app.get(Sessions));
  registerPictureBodies(fastify);
  registerAccessHooks(fastify, app.get(Sessions));
  registerShellHooks(fastify, { flashes: app.get(Flashes), isDemo: options.isDemo ?? false });
  app.useGlobalPipes(createValidationPipe());
  await describeApi(app);
  return app;
}

async function registerSecurity(app: NestFastifyApplication): Promise<void> {
  await app.register(fastifyHelmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        workerSrc: ["'self'"],
        manifestSrc: ["'self'"],
        formAction: ["'self'"],
        baseUri: ["'none'"],
        frameAncestors: ["'none'"],
      },
    },
    // Our own forms must say where they come from: with no referrer at all browsers send `Origin: null` instead.
    referrerPolicy: { policy: 'same-origin' },
    // The workshop's own network often has no TLS: the proxy in front of it says this where there is one.
    strictTransportSecurity: false,
  });
  await app.register(fastifyCookie);
}

async function registerViews(app: NestFastifyApplication, { publicDir, production }: AppOptions): Promise<void> {
  const manifestFile = path.join(publicDir, 'manifest.json');
  const manifest = existsSync(manifestFile) ? (JSON.parse(readFileSync(manifestFile, 'utf8')) as Record<string, string>) : {};
  const partials = path.join(root, 'web/partials');
  const options = {
    partials: Object.fromEntries(
      readdirSync(partials).map((file) => [path.basename(file, '.hbs'), path.relative(root, path.join(partials, file))]),
    ),
  };
  for (const layout of ['main', 'tablet', 'door'] as const) {
    await app.register(fastifyView, {
      engine: { handlebars: createHandlebars(manifest) },
      root,
      layout: `web/layouts/${layout}.hbs`,
      production,
      options,
      ...VIEW_NAMES[layout],
    });
  }
}

async function registerFiles(app: NestFastifyApplication, publicDir: string): Promise<void> {
  if (!existsSync(publicDir)) return;
  const assets = { root: path.join(publicDir, 'assets'), prefix: '/assets/', immutable: true, maxAge: '365d', index: false as const };
  await app.register(fastifyStatic, assets);
  await app.register(fastifyStatic, {
    root: publicDir,
    prefix: '/',
    decorateReply: false,
    wildcard: false,
    index: false,
    globIgnore: ['assets/**', 'manifest.json'],
    cacheControl: false,
    setHeaders: (reply) => void reply.header('cache-control', 'no-cache'),
  });
}

async function describeApi(app: NestFastifyApplication): Promise<void> {
  await SwaggerModule.loadPluginMetadata(openapiMetadata);
  const config = new DocumentBuilder().setTitle('Runwarm').setVersion('1').setOpenAPIVersion('3.1.0').build();
  SwaggerModule.setup('api/docs', app, () => SwaggerModule.createDocument(app, config), {
    ui: false,
    raw: ['json'],
    jsonDocumentUrl: 'api/v1/openapi.json',
  });
}
