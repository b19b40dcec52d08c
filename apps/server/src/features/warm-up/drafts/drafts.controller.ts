import { Body, Controller, Get, Param, Post, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { AnyStaff } from '../../../platform/access/access.decorator.ts';
import { IdPipe } from '../../../platform/id.pipe.ts';
import { FormBack } from '../../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../../platform/pages/flash.ts';
import type { FormState } from '../../../platform/pages/form-state.ts';
import { urls } from '../../../web/urls.ts';
import { DraftDto } from '../dto/draft.dto.ts';
import { Drafts } from './drafts.service.ts';
import { type DraftView, presentDraft } from './present-draft.ts';

/** A log that was sent and not kept yet: what was understood, to be looked over. */
@ApiExcludeController()
@Controller('run-up/drafts')
@AnyStaff()
export class DraftsController {
  constructor(
    private readonly drafts: Drafts,
    private readonly flashes: Flashes,
  ) {}

  @Get(':id')
  @Render('features/warm-up/views/draft.hbs')
  async draft(@Param('id', IdPipe) id: string, @FormBack('draft') form: FormState): Promise<DraftView> {
    return presentDraft(await this.drafts.open(id), form);
  }

  @Post(':id')
  @Redirect('/', 303)
  async answer(@Param('id', IdPipe) id: string, @Body() input: DraftDto): Promise<{ url: string }> {
    if (input.then === 'keep') {
      const jobId = await this.drafts.keep(id, input);
      return {
        url: await this.flashes.say(urls.jobRunUp(jobId), 'The log is kept with the job and the car; the proof sheet is up to date.'),
      };
    }
    await this.drafts.correct(id, input);
    return { url: urls.logDraft(id) };
  }

  @Post(':id/discard')
  @Redirect('/', 303)
  async discard(@Param('id', IdPipe) id: string): Promise<{ url: string }> {
    const jobId = await this.drafts.discard(id);
    return { url: await this.flashes.say(urls.jobRunUp(jobId), 'It is thrown away; nothing of it was kept.') };
  }
}
