import { Module } from '@nestjs/common';
import { CoolantShelf } from './coolant-shelf.service.ts';

@Module({ providers: [CoolantShelf], exports: [CoolantShelf] })
export class CoolantShelfModule {}
