import { Module } from '@nestjs/common';
import { JobCardsModule } from '../job-cards/job-cards.module.ts';
import { ReleaseRepository } from './release.repository.ts';
import { SetAsideRelease } from './set-aside-release.service.ts';
import { UnitsRepository } from './units.repository.ts';
import { Units } from './units.service.ts';

@Module({
  imports: [JobCardsModule],
  providers: [Units, UnitsRepository, SetAsideRelease, ReleaseRepository],
  exports: [Units, SetAsideRelease],
})
export class ReturnsModule {}
