import { Injectable } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import type { Prisma } from '#libs/db';
import { requestState } from '../access/request-state.ts';
import { Sessions } from '../access/sessions.ts';
import { currentStaff } from '../request-context.ts';
import { type Flash, type FormState, formState } from './form-state.ts';

/** The flash that was left for the page now asked for. */
export function flashFor(request: FastifyRequest): Flash | undefined {
  const flash = requestState(request)?.session?.flash as Flash | null | undefined;
  return flash?.page === request.url ? flash : undefined;
}

/** What the named form of this page says back, if it was refused. Asking for it is a promise to show it. */
export function formBack(request: FastifyRequest, form: string): FormState {
  const back = formState(flashFor(request), form);
  const state = requestState(request);
  if (state && back.summary.length > 0) state.isRefusalShown = true;
  return back;
}

/** A refusal that no form of this page has asked for: a button's, mostly. */
export function refusalLeftOver(request: FastifyRequest): FormState['summary'] {
  return requestState(request)?.isRefusalShown === true ? [] : (flashFor(request)?.errors ?? []);
}

@Injectable()
export class Flashes {
  constructor(private readonly sessions: Sessions) {}

  /** Leaves a word for the page that follows. @returns the page, for the redirect. */
  async say(page: string, notice: string): Promise<string> {
    await this.leave(currentStaff().tokenHash, { page, notice });
    return page;
  }

  async leave(tokenHash: string, flash: Flash): Promise<void> {
    await this.sessions.setFlash(tokenHash, flash as unknown as Prisma.InputJsonObject);
  }

  async clear(tokenHash: string): Promise<void> {
    await this.sessions.setFlash(tokenHash, null);
  }
}
