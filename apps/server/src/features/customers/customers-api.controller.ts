import { Body, Controller, Get, Headers, HttpCode, Param, Post, Put, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Only } from '../../platform/access/access.decorator.ts';
import { cleanText } from '../../platform/clean-text.ts';
import { entityTag, versionFrom } from '../../platform/entity-tag.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import type { Customer, CustomerFound } from './customers.repository.ts';
import { CustomersService } from './customers.service.ts';
import { CustomerDto } from './dto/customer.dto.ts';

@Controller('api/v1/customers')
@Only('desk', 'owner')
export class CustomersApiController {
  constructor(private readonly customers: CustomersService) {}

  /** Customers by any part of a name, phone number, town or registration; without `q` those added last. */
  @Get()
  search(@Query('q') words?: string): Promise<CustomerFound[]> {
    return this.customers.search(
      cleanText(typeof words === 'string' ? words : '')
        .trim()
        .slice(0, 100),
    );
  }

  /** One customer; the ETag names the version for a later change. */
  @Get(':id')
  async get(@Param('id', IdPipe) id: string, @Res({ passthrough: true }) reply: FastifyReply): Promise<Customer> {
    const customer = await this.customers.get(id);
    reply.header('etag', entityTag(customer.version));
    return customer;
  }

  /** Adds a customer. */
  @Post()
  @HttpCode(201)
  async add(@Body() input: CustomerDto, @Res({ passthrough: true }) reply: FastifyReply): Promise<Customer> {
    const customer = await this.customers.add(input);
    reply.header('etag', entityTag(customer.version)).header('location', `/api/v1/customers/${customer.id}`);
    return customer;
  }

  /** Changes a customer: needs If-Match with the ETag that was read; 409 where somebody changed it in between. */
  @Put(':id')
  async change(
    @Param('id', IdPipe) id: string,
    @Headers('if-match') ifMatch: string | undefined,
    @Body() input: CustomerDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<Customer> {
    const customer = await this.customers.change(id, versionFrom(ifMatch), input);
    reply.header('etag', entityTag(customer.version));
    return customer;
  }
}
