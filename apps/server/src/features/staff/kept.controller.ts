import { Controller, Get, Post, Req, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { AnyStaff, WithoutKey } from '../../platform/access/access.decorator.ts';
import { KeptForms } from '../../platform/access/kept-forms.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { sendPage } from '../../web/page.ts';

/** After signing in again: the form whose session had ended, with what was typed, ready to be sent. */
@ApiExcludeController()
@Controller('kept')
@AnyStaff()
export class KeptController {
  constructor(private readonly keptForms: KeptForms) {}

  @Get()
  async show(@Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    const kept = await this.keptForms.find(request, currentStaff().staffId);
    if (!kept) return void (await reply.redirect('/', 303));
    const { path: action, page, form } = kept;
    const values = Object.entries(kept.values).map(([name, value]) => ({ name: name.replace(/\.\d+$/, ''), value }));
    const view = { title: 'Your form was kept', action, page, form, values };
    await sendPage(reply, { layout: 'main', template: 'features/staff/views/kept.hbs', view });
  }

  @Post('drop')
  @WithoutKey()
  async drop(@Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    await this.keptForms.drop(request, reply);
    await reply.redirect('/', 303);
  }
}
