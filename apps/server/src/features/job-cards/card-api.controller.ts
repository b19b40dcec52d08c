import { Body, Controller, Get, HttpCode, Param, Post } from '@nestjs/common';
import { ApiBody } from '@nestjs/swagger';
import { AnyStaff, WithoutKey } from '../../platform/access/access.decorator.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { CardIntake } from './card-intake.service.ts';
import { presentCardJson } from './card-page/present-card-json.ts';
import { CardPages } from './card-page.service.ts';
import { type AcknowledgedActionsDto, CardActionsDto } from './dto/card-actions.dto.ts';
import type { CardDto } from './dto/card.dto.ts';

@Controller('api/v1/job-cards')
@AnyStaff()
export class CardApiController {
  constructor(
    private readonly pages: CardPages,
    private readonly intake: CardIntake,
  ) {}

  /** The card as it stands: its stage, steps, hold points, figures and what did not fit. */
  @Get(':id')
  async card(@Param('id', IdPipe) id: string): Promise<CardDto> {
    return presentCardJson(await this.pages.card(id));
  }

  /**
   * Takes actions in their order, each exactly once by its id, so that a call may be repeated. What does not fit the card is
   * kept, acknowledged, and shown to a person with the reason.
   */
  @Post(':id/actions')
  @WithoutKey()
  @HttpCode(200)
  @ApiBody({ type: CardActionsDto })
  async take(@Param('id', IdPipe) id: string, @Body() body: object): Promise<AcknowledgedActionsDto> {
    return { acknowledged: await this.intake.take(id, body) };
  }
}
