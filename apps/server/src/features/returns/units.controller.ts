import { Body, Controller, Get, Param, Post, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { AnyStaff, Only } from '../../platform/access/access.decorator.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { urls } from '../../web/urls.ts';
import { HandOverDto, MoneyDto, OpenBoxDto, ReturnDto, SaleDto, WhyDto } from './dto/unit-acts.dto.ts';
import { presentUnit, type UnitView } from './unit.presenter.ts';
import { ReturnNotes } from './return-notes.service.ts';
import { UnitActs } from './unit-acts.service.ts';
import { Units } from './units.service.ts';

/** One piece with its history, and what can be done with it from where it is. */
@ApiExcludeController()
@Controller('returns-shelf/units/:id')
@Only('desk', 'owner')
export class UnitsController {
  constructor(
    private readonly units: Units,
    private readonly acts: UnitActs,
    private readonly notes: ReturnNotes,
    private readonly workshop: WorkshopFacts,
    private readonly flashes: Flashes,
  ) {}

  @Get()
  @Render('features/returns/views/unit.hbs')
  async unit(@Param('id', IdPipe) id: string, @FormBack('act') act: FormState, @FormBack('money') money: FormState): Promise<UnitView> {
    const unit = await this.units.get(id);
    const [moves, names, against, notes, place] = await Promise.all([
      this.units.moves(id),
      this.units.staffNames(),
      this.units.against(unit),
      this.notes.ofUnit(id),
      this.workshop.get(),
    ]);
    return presentUnit({ unit, moves, names, against, notes, role: currentStaff().role, ...place }, { act, money });
  }

  @Post('return')
  @Redirect('/', 303)
  async sendBack(@Param('id', IdPipe) id: string, @Body() { reason }: ReturnDto): Promise<{ url: string }> {
    await this.acts.sendBack(id, reason);
    return { url: await this.flashes.say(urls.returnsShelf, 'It stands with what goes back.') };
  }

  /** Open to the bench, too: that is where boxes are opened. */
  @Post('opened')
  @AnyStaff()
  @Redirect('/', 303)
  async opened(@Param('id', IdPipe) id: string, @Body() { sure }: OpenBoxDto): Promise<{ url: string }> {
    await this.acts.openBox(id, sure === 'on');
    const { job, label } = await this.units.get(id);
    const page = currentStaff().role === 'technician' && job ? urls.jobParts(job.id) : urls.unit(id);
    return { url: await this.flashes.say(page, `${label}: its box is open.`) };
  }

  @Post('stock')
  @Redirect('/', 303)
  async stock(@Param('id', IdPipe) id: string): Promise<{ url: string }> {
    await this.acts.move(id, { to: 'stocked', why: 'Kept as stock' });
    return { url: await this.flashes.say(urls.returnsShelf, 'It is ours now, in stock for the next job.') };
  }

  @Post('aside')
  @Redirect('/', 303)
  async aside(@Param('id', IdPipe) id: string, @Body() { why }: WhyDto): Promise<{ url: string }> {
    await this.acts.move(id, { to: 'set-aside', why });
    return this.to(id, 'It is set aside again.');
  }

  @Post('hand-over')
  @Redirect('/', 303)
  async handOver(@Param('id', IdPipe) id: string, @Body() { evidence }: HandOverDto): Promise<{ url: string }> {
    await this.acts.handOver([id], evidence);
    return this.to(id, `It has left: ${evidence}.`);
  }

  @Post('taken-out')
  @Redirect('/', 303)
  async takenOut(@Param('id', IdPipe) id: string, @Body() { why }: WhyDto): Promise<{ url: string }> {
    await this.acts.move(id, { to: 'taken-out', why });
    return this.to(id, 'It is out of the car again: decide where it goes.');
  }

  @Post('sold')
  @Redirect('/', 303)
  async sold(@Param('id', IdPipe) id: string, @Body() { document }: SaleDto): Promise<{ url: string }> {
    await this.acts.move(id, { to: 'sold', evidence: document });
    return this.to(id, 'It is sold.');
  }

  @Post('gone')
  @Redirect('/', 303)
  async gone(@Param('id', IdPipe) id: string): Promise<{ url: string }> {
    await this.acts.move(id, { to: 'gone-for-good' });
    return this.to(id, 'Its story is closed.');
  }

  @Post('money')
  @Redirect('/', 303)
  async enter(@Param('id', IdPipe) id: string, @Body() input: MoneyDto): Promise<{ url: string }> {
    await this.acts.enter(id, input);
    return this.to(id, 'The money is on its account.');
  }

  @Post('money/:entryId/take-back')
  @Redirect('/', 303)
  async takeMoneyBack(@Param('id', IdPipe) id: string, @Param('entryId') entryId: string): Promise<{ url: string }> {
    await this.acts.takeMoneyBack(id, entryId);
    return this.to(id, 'A counter-entry takes it back.');
  }

  @Post('loss')
  @Only('owner')
  @Redirect('/', 303)
  async loss(@Param('id', IdPipe) id: string, @Body() { why }: WhyDto): Promise<{ url: string }> {
    await this.acts.acceptLoss(id, why);
    return this.to(id, 'The loss is accepted.');
  }

  @Post('write-off')
  @Only('owner')
  @Redirect('/', 303)
  async writeOff(@Param('id', IdPipe) id: string, @Body() { why }: WhyDto): Promise<{ url: string }> {
    await this.acts.writeOff(id, why);
    return this.to(id, 'It is written off.');
  }

  private async to(id: string, words: string): Promise<{ url: string }> {
    return { url: await this.flashes.say(urls.unit(id), words) };
  }
}
