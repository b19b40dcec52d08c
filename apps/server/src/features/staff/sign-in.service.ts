import { Injectable } from '@nestjs/common';
import { hash, verify } from '@node-rs/argon2';
import { Sessions } from '../../platform/access/sessions.ts';
import type { Role } from '../../platform/request-context.ts';
import { SignInAttempts } from './sign-in-attempts.service.ts';
import { wrongSecret } from './staff.errors.ts';
import { StaffRepository } from './staff.repository.ts';

/** Verified when nobody has that name, so that a guess takes as long as for a real one. */
const NOBODY = hash('nobody has this secret');

/** Signing in: argon2id, and only failures count towards the limit. */
@Injectable()
export class SignInService {
  constructor(
    private readonly staff: StaffRepository,
    private readonly attempts: SignInAttempts,
    private readonly sessions: Sessions,
  ) {}

  /** @returns whose session it is and the token for its cookie. @throws wrong-secret, too-many-tries */
  async signIn({
    name,
    secret,
    from,
  }: {
    name: string;
    secret: string;
    from: string;
  }): Promise<{ token: string; staffId: string; role: Role }> {
    const attempt = await this.attempts.begin({ name, from });
    const found = await this.staff.findCredentials(name);
    const isRight = await verify(found?.secretHash ?? (await NOBODY), secret);
    if (!found || !isRight) throw wrongSecret();
    await this.attempts.takeBack(attempt);
    return { token: await this.sessions.open(found.id), staffId: found.id, role: found.role };
  }
}
