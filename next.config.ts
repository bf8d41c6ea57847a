import type { NextConfig } from 'next';
import { answerHeaders, NO_PAGE_POLICY } from './lib/shield';

/** What is no page; see lib/shield/page-head.ts. */
const NO_PAGES = ['/api/:path*', '/health/:path*', '/metrics', '/load/upload'];

const config: NextConfig = {
  /** Tests build and serve from a folder of their own, beside a running shop. */
  distDir: process.env.REHANG_DIST_DIR ?? '.next',
  poweredByHeader: false,
  /** Types are checked by `npm test`, tests included; a shop that starts need not wait for it. */
  typescript: { ignoreBuildErrors: true },
  reactStrictMode: true,
  /** Lets a refusal of the data door be answered with status 403 and a page of its own. */
  experimental: { authInterrupts: true },
  serverExternalPackages: [
    'better-sqlite3',
    'pdfkit',
    '@prisma/client',
    '@prisma/adapter-better-sqlite3',
    '@prisma/adapter-pg',
    'pg',
    'better-auth',
    'rate-limiter-flexible',
  ],
  /** A browser asks for it by itself whenever a page has no icon yet, as between two pages. */
  redirects: () => Promise.resolve([{ source: '/favicon.ico', destination: '/icon.svg', permanent: false }]),
  headers: () =>
    Promise.resolve([
      { source: '/:path*', headers: [...answerHeaders] },
      ...NO_PAGES.map((source) => ({
        source,
        headers: [
          { key: 'Content-Security-Policy', value: NO_PAGE_POLICY },
          { key: 'Cache-Control', value: 'no-store' },
        ],
      })),
      {
        // A browser keeps to https from then on: said only where it came that way.
        source: '/:path*',
        has: [{ type: 'header', key: 'x-forwarded-proto', value: 'https' }],
        headers: [{ key: 'Strict-Transport-Security', value: 'max-age=31536000' }],
      },
    ]),
};

export default config;
