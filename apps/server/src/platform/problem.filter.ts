import { type ArgumentsHost, Catch, type ExceptionFilter, Logger } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { localPath } from './access/form-marks.ts';
import { requestState } from './access/request-state.ts';
import { faultLine } from './fault-line.ts';
import { Flashes } from './pages/flash.ts';
import { typedValues } from './pages/form-state.ts';
import { sendPage } from '../web/page.ts';
import { type Problem, toProblem } from './problem.ts';

/** Refusals that a person can mend on the form: shown there, with what was typed. */
const ON_THE_FORM = new Set([400, 409, 413, 422]);

@Catch()
export class ProblemFilter implements ExceptionFilter {
  private readonly logger = new Logger('Problem');

  constructor(private readonly flashes: Flashes) {}

  async catch(error: unknown, host: ArgumentsHost): Promise<void> {
    const http = host.switchToHttp();
    const reply = http.getResponse<FastifyReply>();
    const request = http.getRequest<FastifyRequest>();
    const problem = toProblem(error);
    if (problem.status >= 500) this.logger.error(faultLine(error));
    if (reply.sent) return;
    if (request.url.startsWith('/api/')) {
      await reply.status(problem.status).type('application/problem+json').send(JSON.stringify(problem));
      return;
    }
    try {
      await this.answerPage(problem, request, reply);
    } catch (second) {
      // An error in telling of an error, such as a database that went away: plain words rather than a fallen process.
      this.logger.error(faultLine(second));
      if (!reply.sent)
        await reply
          .status(500)
          .type('text/plain; charset=utf-8')
          .send(`${problem.title}. ${problem.detail ?? ''}`);
    }
  }

  private async answerPage(problem: Problem, request: FastifyRequest, reply: FastifyReply): Promise<void> {
    if (problem.status === 401) {
      const back = request.method === 'GET' ? localPath(request.url) : localPath(requestState(request)?.form?.page);
      await reply.redirect(back === undefined || back === '/' ? '/sign-in' : `/sign-in?back=${encodeURIComponent(back)}`, 303);
      return;
    }
    const state = requestState(request);
    const page = state?.form?.page;
    if (page !== undefined && state?.session && ON_THE_FORM.has(problem.status)) {
      const errors = problem.errors ?? [{ field: '', message: problem.detail ?? problem.title }];
      await this.flashes.leave(state.session.staff.tokenHash, {
        page,
        ...(state.form?.name === undefined ? {} : { form: state.form.name }),
        action: request.url,
        errors,
        values: typedValues(request.body),
      });
      await reply.redirect(page, 303);
      return;
    }
    const layout = state?.session ? 'main' : 'door';
    await sendPage(reply.status(problem.status), { layout, template: 'web/error.hbs', view: problem });
  }
}
