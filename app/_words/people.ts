import type { Role } from '@/lib/access';

export const ROLE_NAMES: Record<Role, string> = {
  technician: 'technician',
  trainer: 'trainer',
  manager: 'manager',
};
