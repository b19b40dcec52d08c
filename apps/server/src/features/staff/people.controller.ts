import { Body, Controller, Get, Param, Post, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { Only } from '../../platform/access/access.decorator.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { urls } from '../../web/urls.ts';
import { NewStaffDto } from './dto/new-staff.dto.ts';
import { type PeopleView, presentPeople } from './people.presenter.ts';
import { PeopleService } from './people.service.ts';

@ApiExcludeController()
@Controller('office/people')
@Only('owner')
export class PeopleController {
  constructor(
    private readonly people: PeopleService,
    private readonly flashes: Flashes,
  ) {}

  @Get()
  @Render('features/staff/views/people.hbs')
  async list(@FormBack('person') form: FormState): Promise<PeopleView> {
    return presentPeople(await this.people.list(), { form, selfId: currentStaff().staffId });
  }

  @Post()
  @Redirect('/', 303)
  async add(@Body() input: NewStaffDto): Promise<{ url: string }> {
    await this.people.add(input);
    return { url: await this.flashes.say(urls.people, `${input.displayName} can sign in.`) };
  }

  @Post(':id/close')
  @Redirect('/', 303)
  async close(@Param('id', IdPipe) id: string): Promise<{ url: string }> {
    await this.people.setActive(id, false);
    return { url: await this.flashes.say(urls.people, 'The account is closed.') };
  }

  @Post(':id/open')
  @Redirect('/', 303)
  async open(@Param('id', IdPipe) id: string): Promise<{ url: string }> {
    await this.people.setActive(id, true);
    return { url: await this.flashes.say(urls.people, 'The account is open again.') };
  }
}
