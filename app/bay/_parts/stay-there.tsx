'use client';

import { useEffect } from 'react';
import { stayThere } from '@/app/bay/_device/stay-there';

/** Has the page there without a connection, where it was opened once with one. */
export function StayThere() {
  useEffect(() => {
    stayThere().catch(() => undefined);
  }, []);
  return null;
}
