import { Body, Controller, Get, Param, Post, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { Only } from '../../platform/access/access.decorator.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { urls } from '../../web/urls.ts';
import { FindUnitDto, HandOverTogetherDto } from './dto/unit-acts.dto.ts';
import { type HandOverView, presentHandOver } from './hand-over.presenter.ts';
import { presentShelf, type ShelfView } from './shelf.presenter.ts';
import { ShelfService } from './shelf.service.ts';
import { UnitActs } from './unit-acts.service.ts';
import { Units } from './units.service.ts';

@ApiExcludeController()
@Controller('returns-shelf')
@Only('desk', 'owner')
export class ShelfController {
  constructor(
    private readonly shelf: ShelfService,
    private readonly acts: UnitActs,
    private readonly units: Units,
    private readonly flashes: Flashes,
  ) {}

  @Get()
  @Render('features/returns/views/shelf.hbs')
  async open(@FormBack('find') find: FormState): Promise<ShelfView> {
    return presentShelf(await this.shelf.open(), find);
  }

  @Post('units')
  @Redirect('/', 303)
  async find(@Body() { code }: FindUnitDto): Promise<{ url: string }> {
    return { url: urls.unit((await this.units.byTypedCode(code)).id) };
  }

  @Get('hand-over/:supplierId')
  @Render('features/returns/views/hand-over.hbs')
  async askHandOver(@Param('supplierId', IdPipe) supplierId: string, @FormBack('hand-over') form: FormState): Promise<HandOverView> {
    return presentHandOver(form, await this.shelf.forSupplier(supplierId), supplierId);
  }

  @Post('hand-over/:supplierId')
  @Redirect('/', 303)
  async handOver(@Body() { units, evidence }: HandOverTogetherDto): Promise<{ url: string }> {
    await this.acts.handOver(units, evidence);
    const count = new Set(units).size;
    return {
      url: await this.flashes.say(urls.returnsShelf, `${count === 1 ? 'One piece has' : `${count} pieces have`} left: ${evidence}.`),
    };
  }
}
