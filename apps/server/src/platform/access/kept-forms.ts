import { Injectable } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Clock } from '../clock.ts';
import { PrismaService } from '../database.ts';
import { typedValues } from '../pages/form-state.ts';
import { originOf } from './origin.ts';
import { ownCookie } from './own-cookie.ts';
import { requestState } from './request-state.ts';
import { SESSION_COOKIE, Sessions } from './sessions.ts';
import { hashToken, newToken } from './tokens.ts';

const COOKIE = 'kept';
const KEEP_S = 15 * 60;
/** Whose form it is stands among its values; no field of a form is called so. */
const OWNER = '_staff';

export interface KeptForm {
  path: string;
  page: string | undefined;
  form: string | undefined;
  values: Readonly<Record<string, string>>;
}

/** A form that came after its session had ended waits here until its sender, and nobody else, has signed in again. */
@Injectable()
export class KeptForms {
  constructor(
    private readonly prisma: PrismaService,
    private readonly clock: Clock,
    private readonly sessions: Sessions,
  ) {}

  /** Keeps the form of this request where one of our pages sent it and a session that ended by itself tells whose it is. */
  async keep(request: FastifyRequest, reply: FastifyReply): Promise<void> {
    const marks = requestState(request)?.form;
    if (!marks || typeof request.body !== 'object' || request.body === null || originOf(request) === 'foreign') return;
    const staffId = await this.sessions.whoseEnded(request.cookies[SESSION_COOKIE] ?? '');
    if (staffId === undefined) return;
    const token = newToken();
    const body = { ...typedValues(request.body), _page: marks.page ?? '', _form: marks.name ?? '', [OWNER]: staffId };
    await this.forgetOld();
    await this.prisma.db.keptForm.create({ data: { tokenHash: hashToken(token), path: request.url, body, keptAt: this.clock.now() } });
    reply.setCookie(COOKIE, token, { ...ownCookie(request), maxAge: KEEP_S });
  }

  /** The form that waits for this person. */
  async find(request: FastifyRequest, staffId: string): Promise<KeptForm | undefined> {
    const token = request.cookies[COOKIE];
    if (token === undefined) return undefined;
    const row = await this.prisma.db.keptForm.findUnique({ where: { tokenHash: hashToken(token) } });
    if (!row || row.keptAt < this.oldest()) return undefined;
    const { _page: page, _form: form, [OWNER]: owner, ...values } = typedValues(row.body);
    return owner === staffId ? { path: row.path, page, form, values } : undefined;
  }

  /** Sent, or thrown away. */
  async drop(request: FastifyRequest, reply: FastifyReply): Promise<void> {
    const token = request.cookies[COOKIE];
    if (token === undefined) return;
    await this.prisma.db.keptForm.deleteMany({ where: { tokenHash: hashToken(token) } });
    reply.clearCookie(COOKIE, ownCookie(request));
  }

  async forgetOld(): Promise<void> {
    await this.prisma.db.keptForm.deleteMany({ where: { keptAt: { lt: this.oldest() } } });
  }

  private oldest(): Date {
    return new Date(this.clock.now().getTime() - KEEP_S * 1_000);
  }
}
