import { createHash } from 'node:crypto';
import { type CanActivate, type ExecutionContext, Injectable, UnsupportedMediaTypeException } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { canonicalJson } from '../canonical-json.ts';
import { DomainError } from '../domain-error.ts';
import { withoutSecrets } from '../pages/form-state.ts';
import { requestContext, type Role } from '../request-context.ts';
import { requestFiles } from '../uploads/request-files.ts';
import { fileLimitsOf } from '../uploads/takes-files.decorator.ts';
import { takesPictures } from '../uploads/takes-pictures.decorator.ts';
import { refuseDeepBody } from './deep-body.ts';
import { ACCESS, type Access, WITHOUT_HEADER, WITHOUT_KEY } from './access.decorator.ts';
import { checkOrigin, isApi } from './check-origin.ts';
import { Devices, TABLET_COOKIE } from './devices.ts';
import { isRequestKey } from './form-marks.ts';
import { KeptForms } from './kept-forms.ts';
import { requestState, type RequestState } from './request-state.ts';

const SAFE = new Set(['GET', 'HEAD', 'OPTIONS']);

/** Default deny: who may call, from our own pages only, each change with its key. */
@Injectable()
export class AccessGuard implements CanActivate {
  constructor(
    private readonly reflector: Reflector,
    private readonly keptForms: KeptForms,
    private readonly devices: Devices,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const request = context.switchToHttp().getRequest<FastifyRequest>();
    const reply = context.switchToHttp().getResponse<FastifyReply>();
    const targets = [context.getHandler(), context.getClass()];
    const access = this.reflector.getAllAndOverride<Access | undefined>(ACCESS, targets);
    const state = requestState(request);
    if (!state) throw new Error('The access hook must run before the guard');
    if (access === undefined) throw new DomainError('forbidden', 'closed', 'Nobody may do this.');
    if (access === 'tablet') await this.checkTablet(request, state);
    else if (access !== 'anyone') await this.checkRole(access, { request, reply, state });
    if (SAFE.has(request.method)) return true;
    if (isApi(request)) refuseOtherContent(request);
    refuseDeepBody(request.body);
    checkOrigin(request, state, { needsHeader: this.reflector.getAllAndOverride<boolean | undefined>(WITHOUT_HEADER, targets) !== true });
    const { problem } = requestFiles(request);
    if (problem) throw problem;
    if (state.form?.isKept === true) await this.keptForms.drop(request, reply);
    if (this.reflector.getAllAndOverride<boolean | undefined>(WITHOUT_KEY, targets) !== true) this.takeKey(request, state);
    return true;
  }

  private async checkRole(
    access: readonly Role[],
    { request, reply, state }: { request: FastifyRequest; reply: FastifyReply; state: RequestState },
  ): Promise<void> {
    const staff = state.session?.staff;
    if (!staff) {
      await this.keptForms.keep(request, reply);
      throw new DomainError('not-signed-in', 'not-signed-in', 'Sign in first.');
    }
    if (!access.includes(staff.role)) throw new DomainError('forbidden', 'wrong-role', `This is not open to you: ask ${askWhom(access)}.`);
  }

  private async checkTablet(request: FastifyRequest, state: RequestState): Promise<void> {
    const tablet = await this.devices.find(request.cookies[TABLET_COOKIE]);
    if (tablet) {
      state.tablet = tablet;
      return;
    }
    if (state.session)
      throw new DomainError('forbidden', 'no-tablet', 'This is for enrolled tablets: enrol this one first, at Bays, Tablets.');
    throw new DomainError(
      'not-signed-in',
      'not-signed-in',
      'This tablet is not enrolled, or no longer: enrol it with a code from Bays, Tablets.',
    );
  }

  private takeKey(request: FastifyRequest, state: RequestState): void {
    const store = requestContext.getStore();
    if (!store) throw new Error('The context hook must run before the guard');
    const key = state.form ? state.form.key : request.headers['idempotency-key'];
    if (!isRequestKey(key)) throw state.form ? formWithoutKey() : callWithoutKey();
    const route = `${request.method} ${request.url}`;
    store.requestKey = {
      scope: state.session?.staff.staffId ?? 'door',
      key,
      route,
      bodyHash: bodyHash(request),
    };
  }
}

const callWithoutKey = (): DomainError =>
  new DomainError('malformed', 'key-missing', 'Send the header Idempotency-Key with a UUID of its own for each change.');

const formWithoutKey = (): DomainError =>
  new DomainError('malformed', 'key-missing', 'Something of this form was lost on the way: reload the page and send it again.');

/** Tells a repeat from another change under the same key: by all that was sent, files included. */
function bodyHash(request: FastifyRequest): string {
  const hash = createHash('sha256').update(canonicalJson(withoutSecrets(request.body)));
  for (const { field, bytes } of requestFiles(request).files) hash.update(field).update(bytes);
  return hash.digest('hex');
}

function askWhom(roles: readonly Role[]): string {
  const words = { desk: 'the service desk', technician: 'a technician', owner: 'the owner' } as const;
  return roles.map((role) => words[role]).join(' or ');
}

/** What a form of another site can send without asking the browser (text, form fields) is not taken by the API at all. */
function refuseOtherContent(request: FastifyRequest): void {
  const [type = ''] = (request.headers['content-type'] ?? '').split(';');
  const kind = type.trim().toLowerCase();
  if (kind === '' || kind === 'application/json' || (kind === 'multipart/form-data' && fileLimitsOf(request))) return;
  if (kind.startsWith('image/') && takesPictures(request)) return;
  throw new UnsupportedMediaTypeException('Send JSON, with the header Content-Type: application/json.');
}
