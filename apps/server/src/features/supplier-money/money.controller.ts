import { Controller, Get, Query, Render, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { Only } from '../../platform/access/access.decorator.ts';
import { csvText } from '../../web/csv-text.ts';
import { urls } from '../../web/urls.ts';
import { MoneyUnitsDto } from './dto/money-units.dto.ts';
import { moneyRows, type MoneyUnitsView, type MoneyView, presentMoney, presentMoneyUnits } from './money.presenter.ts';
import { Money } from './money.service.ts';

const SHOWN = 200;

/** Which of our money lies at which supplier, down to the piece. */
@ApiExcludeController()
@Controller('returns-shelf/money')
@Only('owner')
export class MoneyController {
  constructor(private readonly money: Money) {}

  @Get()
  @Render('features/supplier-money/views/money.hbs')
  async open(): Promise<MoneyView> {
    return presentMoney(await this.money.open());
  }

  @Get('units')
  @Render('features/supplier-money/views/money-units.hbs')
  async units(@Query() { what = 'at-supplier', supplier, age }: MoneyUnitsDto): Promise<MoneyUnitsView> {
    const { units, currency } = await this.money.units({ what, supplierId: supplier, age }, SHOWN);
    return presentMoneyUnits(units, { what, age, most: SHOWN, currency, csvHref: urls.moneyUnitsCsv({ what, supplier, age }) });
  }

  @Get('units.csv')
  async csv(@Query() { what = 'at-supplier', supplier, age }: MoneyUnitsDto, @Res() reply: FastifyReply): Promise<void> {
    const { units, currency } = await this.money.units({ what, supplierId: supplier, age });
    await reply
      .type('text/csv; charset=utf-8')
      .header('content-disposition', 'attachment; filename="money-at-suppliers.csv"')
      .send(csvText(moneyRows(units, currency)));
  }
}
