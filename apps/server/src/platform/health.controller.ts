import { Controller, Get } from '@nestjs/common';
import { Anyone } from './access/access.decorator.ts';
import { PrismaService } from './database.ts';
import { DomainError } from './domain-error.ts';

@Controller('api/v1/health')
@Anyone()
export class HealthController {
  constructor(private readonly prisma: PrismaService) {}

  /** Answers once the database can be reached and its migrations are applied. */
  @Get()
  async health(): Promise<{ status: 'ok' }> {
    try {
      await this.prisma.db.$queryRaw`select id from workshop limit 1`;
    } catch {
      throw new DomainError('unavailable', 'not-ready', 'The database cannot be reached yet.');
    }
    return { status: 'ok' };
  }
}
