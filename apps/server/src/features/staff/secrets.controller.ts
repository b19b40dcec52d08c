import { Body, Controller, Get, Param, Post, Redirect, Render, Req } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyRequest } from 'fastify';
import { AnyStaff, Only, WithoutKey } from '../../platform/access/access.decorator.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { homeOf } from '../../web/rooms.ts';
import { urls } from '../../web/urls.ts';
import { NewSecretDto } from './dto/new-secret.dto.ts';
import { OwnPinDto } from './dto/own-pin.dto.ts';
import { OwnSecretDto } from './dto/own-secret.dto.ts';
import { presentOwnPin, presentOwnSecret, presentSecretOf, type SecretView } from './secrets.presenter.ts';
import { SecretsService } from './secrets.service.ts';

const FORM = 'secret';
const VIEW = 'features/staff/views/secret.hbs';

/** Setting a secret twice is setting it once: these forms need no key. */
@ApiExcludeController()
@Controller()
export class SecretsController {
  constructor(
    private readonly secrets: SecretsService,
    private readonly flashes: Flashes,
  ) {}

  @Get('your-secret')
  @AnyStaff()
  @Render(VIEW)
  own(@FormBack(FORM) form: FormState): SecretView {
    return presentOwnSecret(form, homeOf(currentStaff().role));
  }

  @Post('your-secret')
  @AnyStaff()
  @WithoutKey()
  @Redirect('/', 303)
  async changeOwn(@Body() input: OwnSecretDto, @Req() request: FastifyRequest): Promise<{ url: string }> {
    await this.secrets.changeOwn(input, request.ip);
    return { url: await this.flashes.say(urls.ownSecret, 'Your secret is changed.') };
  }

  @Get('your-secret/pin')
  @AnyStaff()
  @Render(VIEW)
  ownPin(@FormBack(FORM) form: FormState): SecretView {
    return presentOwnPin(form);
  }

  @Post('your-secret/pin')
  @AnyStaff()
  @WithoutKey()
  @Redirect('/', 303)
  async setOwnPin(@Body() input: OwnPinDto, @Req() request: FastifyRequest): Promise<{ url: string }> {
    await this.secrets.setOwnPin(input, request.ip);
    return { url: await this.flashes.say(urls.ownPin, 'Your PIN is set.') };
  }

  @Get('office/people/:id/secret')
  @Only('owner')
  @Render(VIEW)
  async ofPerson(@Param('id', IdPipe) id: string, @FormBack(FORM) form: FormState): Promise<SecretView> {
    return presentSecretOf(await this.secrets.person(id), form);
  }

  @Post('office/people/:id/secret')
  @Only('owner')
  @WithoutKey()
  @Redirect('/', 303)
  async giveNew(@Param('id', IdPipe) id: string, @Body() input: NewSecretDto): Promise<{ url: string }> {
    await this.secrets.giveNew(id, input);
    return { url: await this.flashes.say(urls.people, 'The new secret is set.') };
  }
}
