import { Injectable } from '@nestjs/common';
import { hash, verify } from '@node-rs/argon2';
import type { Device } from '../../platform/access/devices.ts';
import { Sessions } from '../../platform/access/sessions.ts';
import { Clock } from '../../platform/clock.ts';
import { SignInAttempts } from '../staff/sign-in-attempts.service.ts';
import { wrongPin } from './tablets.errors.ts';
import { TabletsRepository } from './tablets.repository.ts';

/** Verified where nobody has set a PIN, so that a guess takes as long as for a real one. */
const NO_PIN = hash('nobody has this PIN');

/** Signing in by PIN: on an enrolled tablet only, and only failures count towards the limit. */
@Injectable()
export class PinSignIns {
  constructor(
    private readonly tablets: TabletsRepository,
    private readonly attempts: SignInAttempts,
    private readonly sessions: Sessions,
    private readonly clock: Clock,
  ) {}

  /** @returns the session's token, and the sign-in that the person's actions name. @throws wrong-pin, too-many-tries */
  async signIn(tablet: Device, { staffId, pin }: { staffId: string; pin: string }): Promise<{ token: string; signInId: string }> {
    const attempt = await this.attempts.begin({ name: `pin ${staffId}`, from: tablet.id });
    const known = await this.tablets.pinHash(staffId);
    const isRight = await verify(known ?? (await NO_PIN), pin);
    if (known === null || !isRight) throw wrongPin();
    await this.attempts.takeBack(attempt);
    const signInId = await this.tablets.addSignIn({ tabletId: tablet.id, staffId, at: this.clock.now() });
    return { token: await this.sessions.open(staffId, signInId), signInId };
  }
}
