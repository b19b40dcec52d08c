import { Controller, Get, Post, Req, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { AnyStaff, WithoutKey } from '../../platform/access/access.decorator.ts';
import { KEPT_COOKIE, KeptForms } from '../../platform/access/kept-forms.ts';
import { typedValues } from '../../platform/pages/form-state.ts';
import { sendPage } from '../../web/page.ts';

/** After signing in again: the form whose session had ended, with what was typed, ready to be sent. */
@ApiExcludeController()
@Controller('kept')
@AnyStaff()
export class KeptController {
  constructor(private readonly keptForms: KeptForms) {}

  @Get()
  async show(@Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    const token = request.cookies[KEPT_COOKIE];
    const kept = token === undefined ? undefined : await this.keptForms.find(token);
    if (!kept) return void (await reply.redirect('/', 303));
    const { _page: page, _form: form, ...typed } = typedValues(kept.body);
    const values = Object.entries(typed).map(([name, value]) => ({ name: name.replace(/\.\d+$/, ''), value }));
    const view = { title: 'Your form was kept', action: kept.path, page, form, values };
    await sendPage(reply, { layout: 'main', template: 'features/staff/views/kept.hbs', view });
  }

  @Post('drop')
  @WithoutKey()
  async drop(@Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    await this.keptForms.drop(request.cookies[KEPT_COOKIE] ?? '');
    await reply.clearCookie(KEPT_COOKIE, { path: '/' }).redirect('/', 303);
  }
}
