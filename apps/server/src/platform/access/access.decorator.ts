import { applyDecorators, type CustomDecorator, SetMetadata } from '@nestjs/common';
import type { Role } from '../request-context.ts';

export const ACCESS = Symbol('access');
export const WITHOUT_KEY = Symbol('without-key');
export const WITHOUT_HEADER = Symbol('without-header');

/** Who may call a route: nobody, until this is said. */
export type Access = 'anyone' | 'tablet' | readonly Role[];

export const Anyone = (): CustomDecorator<symbol> => SetMetadata(ACCESS, 'anyone' satisfies Access);

export const AnyStaff = (): CustomDecorator<symbol> => SetMetadata(ACCESS, ['desk', 'technician', 'owner'] satisfies Access);

export const Only = (...roles: Role[]): CustomDecorator<symbol> => SetMetadata(ACCESS, roles satisfies Access);

/** An enrolled tablet by its own token, whoever is signed in on it. */
export const TabletOnly = (): CustomDecorator<symbol> => SetMetadata(ACCESS, 'tablet' satisfies Access);

/** A POST that guards itself against being done twice: it needs no request key. */
export const WithoutKey = (): CustomDecorator<symbol> => SetMetadata(WITHOUT_KEY, true);

/** A call that changes nothing of the workshop (a calculation, the session): it needs neither a key nor the header of our pages. */
export const ChangesNothing = (): ClassDecorator & MethodDecorator => applyDecorators(WithoutKey(), SetMetadata(WITHOUT_HEADER, true));
