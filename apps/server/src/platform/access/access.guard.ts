import { createHash } from 'node:crypto';
import { type CanActivate, type ExecutionContext, Injectable } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { canonicalJson } from '../canonical-json.ts';
import { DomainError } from '../domain-error.ts';
import { typedValues } from '../pages/form-state.ts';
import { requestContext } from '../request-context.ts';
import { ACCESS, type Access, WITHOUT_KEY } from './access.decorator.ts';
import { isRequestKey } from './form-marks.ts';
import { KEPT_COOKIE, KeptForms } from './kept-forms.ts';
import { requestState, type RequestState } from './request-state.ts';
import { isCsrfToken } from './tokens.ts';

const SAFE = new Set(['GET', 'HEAD', 'OPTIONS']);

/** Default deny: who may call, from our own pages only, each change with its key. */
@Injectable()
export class AccessGuard implements CanActivate {
  constructor(
    private readonly reflector: Reflector,
    private readonly keptForms: KeptForms,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const request = context.switchToHttp().getRequest<FastifyRequest>();
    const reply = context.switchToHttp().getResponse<FastifyReply>();
    const targets = [context.getHandler(), context.getClass()];
    const access = this.reflector.getAllAndOverride<Access | undefined>(ACCESS, targets);
    const state = requestState(request);
    if (!state) throw new Error('The access hook must run before the guard');
    if (access === undefined) throw new DomainError('forbidden', 'closed', 'Nobody may do this.');
    if (access !== 'anyone') await this.checkRole(access, { request, reply, state });
    if (SAFE.has(request.method)) return true;
    this.checkOrigin(request, state);
    if (state.form?.isKept === true) await this.keptForms.drop(request.cookies[KEPT_COOKIE] ?? '');
    if (this.reflector.getAllAndOverride<boolean | undefined>(WITHOUT_KEY, targets) !== true) this.takeKey(request, state);
    return true;
  }

  private async checkRole(
    access: Exclude<Access, 'anyone'>,
    { request, reply, state }: { request: FastifyRequest; reply: FastifyReply; state: RequestState },
  ): Promise<void> {
    const staff = state.session?.staff;
    if (!staff) {
      if (state.form && typeof request.body === 'object' && request.body !== null) {
        const marks = { _page: state.form.page ?? '', _form: state.form.name ?? '' };
        const token = await this.keptForms.keep(request.url, { ...typedValues(request.body), ...marks });
        reply.setCookie(KEPT_COOKIE, token, { path: '/', httpOnly: true, sameSite: 'lax' });
      }
      throw new DomainError('not-signed-in', 'not-signed-in', 'Sign in first.');
    }
    if (!access.includes(staff.role)) throw new DomainError('forbidden', 'wrong-role', `This is not open to you: ask ${askWhom(access)}.`);
  }

  private checkOrigin(request: FastifyRequest, state: RequestState): void {
    const isApi = request.url.startsWith('/api/');
    if (isApi && (!state.session || request.headers['x-requested-with'] === 'fetch')) return;
    const token = isApi ? request.headers['x-csrf-token'] : state.form?.csrf;
    if (isCsrfToken(state.csrfSecret, token)) return;
    throw new DomainError(
      'forbidden',
      'not-from-our-page',
      isApi
        ? 'Send the header X-Requested-With: fetch with a session, so that another site cannot act for you.'
        : 'This form is no longer valid. Go back, reload the page and send it again.',
    );
  }

  private takeKey(request: FastifyRequest, state: RequestState): void {
    const store = requestContext.getStore();
    if (!store) throw new Error('The context hook must run before the guard');
    const key = state.form ? state.form.key : request.headers['idempotency-key'];
    if (!isRequestKey(key)) {
      throw new DomainError('malformed', 'key-missing', 'Send the header Idempotency-Key with a UUID of its own for each change.');
    }
    const route = `${request.method} ${request.url}`;
    store.requestKey = {
      scope: state.session?.staff.staffId ?? 'door',
      key,
      route,
      bodyHash: createHash('sha256')
        .update(canonicalJson(request.body ?? null))
        .digest('hex'),
    };
  }
}

function askWhom(roles: Exclude<Access, 'anyone'>): string {
  const words = { desk: 'the service desk', technician: 'a technician', owner: 'the owner' } as const;
  return roles.map((role) => words[role]).join(' or ');
}
