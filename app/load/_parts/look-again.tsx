'use client';

import { useRouter } from 'next/navigation';
import { useEffect } from 'react';

/** How often the page is fetched anew while a file is at work, ms. */
const EVERY = 700;

/** Fetches the page anew from time to time for as long as it stands on it. */
export function LookAgain() {
  const router = useRouter();
  useEffect(() => {
    const timer = setInterval(() => router.refresh(), EVERY);
    return () => clearInterval(timer);
  }, [router]);
  return null;
}
