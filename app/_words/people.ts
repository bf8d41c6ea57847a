import { words } from '@/app/_words/words';
import type { Role } from '@/lib/access';

export const roleName = (role: Role): string => words('terms')(`roles.${role}`);
