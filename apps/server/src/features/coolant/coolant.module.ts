import { Module } from '@nestjs/common';
import { CoolantApiController } from './coolant-api.controller.ts';

@Module({ controllers: [CoolantApiController] })
export class CoolantModule {}
