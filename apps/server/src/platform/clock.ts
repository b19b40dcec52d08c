import { Injectable } from '@nestjs/common';

/** The only place that asks the time, so that tests can stop it. */
@Injectable()
export class Clock {
  now(): Date {
    return new Date();
  }
}
