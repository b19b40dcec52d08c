import { Injectable } from '@nestjs/common';
import { hash, verify } from '@node-rs/argon2';
import { Sessions } from '../../platform/access/sessions.ts';
import { Clock } from '../../platform/clock.ts';
import type { Role } from '../../platform/request-context.ts';
import { tooManyTries, wrongSecret } from './staff.errors.ts';
import { StaffRepository } from './staff.repository.ts';

const WINDOW_MIN = 15;
const MOST_BY_NAME = 8;
const MOST_BY_ADDRESS = 40;

/** Verified when nobody has that name, so that a guess takes as long as for a real one. */
const NOBODY = hash('nobody has this secret');

/** Signing in: argon2id, and only failures count towards the limit. */
@Injectable()
export class SignInService {
  constructor(
    private readonly staff: StaffRepository,
    private readonly sessions: Sessions,
    private readonly clock: Clock,
  ) {}

  /** @returns the token for the session's cookie. */
  async signIn({ name, secret, from }: { name: string; secret: string; from: string }): Promise<{ token: string; role: Role }> {
    const at = this.clock.now();
    const since = new Date(at.getTime() - WINDOW_MIN * 60_000);
    const key = name.trim().toLowerCase();
    const { byName, byAddress } = await this.staff.countFailures(since, { name: key, from });
    if (byName >= MOST_BY_NAME || byAddress >= MOST_BY_ADDRESS) throw tooManyTries(WINDOW_MIN);
    const found = await this.staff.findCredentials(name.trim());
    const isRight = await verify(found?.secretHash ?? (await NOBODY), secret);
    if (!found || !isRight) {
      await this.staff.recordFailure({ name: key, from, at, forgetBefore: since });
      throw wrongSecret();
    }
    return { token: await this.sessions.open(found.id), role: found.role };
  }
}
