import { Body, Controller, Get, Param, Post, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { Only } from '../../platform/access/access.decorator.ts';
import { Clock } from '../../platform/clock.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { urls } from '../../web/urls.ts';
import { NewTabletDto } from './dto/tablet.dto.ts';
import { presentTablets, type TabletsView } from './tablets.presenter.ts';
import { Tablets } from './tablets.service.ts';

/** Which tablets there are, what of theirs no card could take, which of their numbers never arrived. */
@ApiExcludeController()
@Controller('bays/tablets')
@Only('desk', 'owner')
export class TabletsController {
  constructor(
    private readonly tablets: Tablets,
    private readonly flashes: Flashes,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
  ) {}

  @Get()
  @Render('features/tablets/views/tablets.hbs')
  async list(@FormBack('tablet') form: FormState): Promise<TabletsView> {
    const { timeZone } = await this.workshop.get();
    return presentTablets(await this.tablets.overview(), { form, timeZone, now: this.clock.now() });
  }

  @Post()
  @Redirect('/', 303)
  async prepare(@Body() { name }: NewTabletDto): Promise<{ url: string }> {
    const code = await this.tablets.prepare(name);
    const spoken = `${code.slice(0, 4)} ${code.slice(4)}`;
    return {
      url: await this.flashes.say(
        urls.tablets,
        `On the tablet open ${urls.tablet} and type the code ${spoken}. It is good for 15 minutes.`,
      ),
    };
  }

  @Post(':id/revoke')
  @Redirect('/', 303)
  async revoke(@Param('id', IdPipe) id: string): Promise<{ url: string }> {
    await this.tablets.revoke(id);
    return {
      url: await this.flashes.say(
        urls.tablets,
        'The tablet can send nothing any more. What waits on it is sent once it is enrolled again.',
      ),
    };
  }

  @Post('strays/:id')
  @Redirect('/', 303)
  async lookAt(@Param('id', IdPipe) id: string): Promise<{ url: string }> {
    await this.tablets.lookAtStray(id);
    return { url: await this.flashes.say(urls.tablets, 'It stays on record, looked at.') };
  }
}
