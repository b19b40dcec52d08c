import { Module } from '@nestjs/common';
import { DoorController } from './door.controller.ts';
import { FirstOwnerController } from './first-owner.controller.ts';
import { FirstOwnerService } from './first-owner.service.ts';
import { PeopleController } from './people.controller.ts';
import { PeopleService } from './people.service.ts';
import { KeptController } from './kept.controller.ts';
import { SecretsController } from './secrets.controller.ts';
import { SecretsService } from './secrets.service.ts';
import { SessionApiController } from './session-api.controller.ts';
import { SignInAttempts } from './sign-in-attempts.service.ts';
import { SignInService } from './sign-in.service.ts';
import { StaffRepository } from './staff.repository.ts';

@Module({
  controllers: [DoorController, FirstOwnerController, KeptController, PeopleController, SecretsController, SessionApiController],
  exports: [SignInAttempts],
  providers: [SignInService, SignInAttempts, FirstOwnerService, PeopleService, SecretsService, StaffRepository],
})
export class StaffModule {}
