import { Body, Controller, Get, Post, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { plainToInstance } from 'class-transformer';
import { Anyone } from '../../platform/access/access.decorator.ts';
import { DomainError } from '../../platform/domain-error.ts';
import { EMPTY_FORM, type FormState, formState, typedValues } from '../../platform/pages/form-state.ts';
import { createValidationPipe } from '../../platform/validation.ts';
import { sendPage } from '../../web/page.ts';
import { urls } from '../../web/urls.ts';
import { presentFirstOwner } from './door.presenter.ts';
import { FirstOwnerDto } from './dto/first-owner.dto.ts';
import { FirstOwnerService } from './first-owner.service.ts';

/** Set-up of a workshop that nobody owns yet. There is no session to leave a refused form in, so it is drawn again at once. */
@ApiExcludeController()
@Controller('first-owner')
@Anyone()
export class FirstOwnerController {
  private readonly validation = createValidationPipe();

  constructor(private readonly firstOwner: FirstOwnerService) {}

  @Get()
  async ask(@Res() reply: FastifyReply): Promise<void> {
    if (!(await this.firstOwner.isNeeded())) return void (await reply.redirect(urls.door, 303));
    await this.show(reply, EMPTY_FORM);
  }

  @Post()
  async setUp(@Body() body: Record<string, unknown>, @Res() reply: FastifyReply): Promise<void> {
    try {
      const input = (await this.validation.transform(plainToInstance(FirstOwnerDto, body), {
        type: 'body',
        metatype: FirstOwnerDto,
      })) as FirstOwnerDto;
      await this.firstOwner.setUp(input);
      await reply.redirect(urls.door, 303);
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
      const errors = error.details.errors ?? [{ field: '', message: error.message }];
      reply.status(422);
      await this.show(reply, formState({ page: urls.firstOwner, errors, values: typedValues(body) }, ''));
    }
  }

  private async show(reply: FastifyReply, form: FormState): Promise<void> {
    await sendPage(reply, { layout: 'door', template: 'features/staff/views/first-owner.hbs', view: presentFirstOwner(form) });
  }
}
