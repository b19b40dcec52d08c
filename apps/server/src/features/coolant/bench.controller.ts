import { Body, Controller, Get, Param, Post, Query, Redirect, Render, Req } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyRequest } from 'fastify';
import { AnyStaff } from '../../platform/access/access.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import { addressOf, benchPage } from './address-of.ts';
import { BenchService } from './bench.service.ts';
import { noTool } from './coolant.errors.ts';
import { UnitsDto } from './dto/units.dto.ts';
import { type Query as Typed, readBenchForm } from './form/read-bench-form.ts';
import { askRefill } from './refill/ask-refill.ts';
import { presentRefill, type RefillView } from './refill/present-refill.ts';
import { NOTHING_KNOWN } from './refill/known.ts';
import { presentTool, type ToolView } from './tools/present-tool.ts';
import { findTool } from './tools/tools.ts';
import { UnitsService } from './units/units.service.ts';

/** The bench: every page is a form whose address holds what was typed, so that it answers without script and can be sent to a colleague. */
@ApiExcludeController()
@Controller('coolant-bench')
@AnyStaff()
export class BenchController {
  constructor(
    private readonly bench: BenchService,
    private readonly units: UnitsService,
    private readonly flashes: Flashes,
  ) {}

  @Get()
  @Render('features/coolant/views/refill.hbs')
  async refill(@Query() typed: Typed, @Req() request: FastifyRequest): Promise<RefillView> {
    const context = await this.bench.context();
    const asked = askRefill(context, NOTHING_KNOWN, typed);
    return presentRefill({ ...asked, context, address: addressOf(request), carsHere: await this.bench.carsHere() });
  }

  @Post('units')
  @Redirect('/', 303)
  async chooseUnits(@Body() input: UnitsDto): Promise<{ url: string }> {
    await this.units.choose(input);
    return { url: await this.flashes.say(benchPage(input.back), 'Figures are shown and typed in these units from now on.') };
  }

  @Get(':tool')
  @Render('features/coolant/views/tool.hbs')
  async tool(@Param('tool') key: string, @Query() typed: Typed, @Req() request: FastifyRequest): Promise<ToolView> {
    const tool = findTool(key);
    if (!tool) throw noTool();
    const context = await this.bench.context();
    const form = readBenchForm(
      tool.groups(context).flatMap(({ fields }) => fields),
      typed,
      context.units,
    );
    return presentTool({ tool, form, outcome: tool.reckon(form, context), context, address: addressOf(request) });
  }
}
