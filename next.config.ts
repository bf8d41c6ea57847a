import type { NextConfig } from 'next';

const development = process.env.NODE_ENV === 'development';

/**
 * Without nonces the framework's own inline scripts need 'unsafe-inline'; everything else is ours alone: no
 * foreign host can be reached, framed or framing. The development server compiles with eval.
 */
const contentSecurityPolicy = [
  "default-src 'self'",
  `script-src 'self' 'unsafe-inline'${development ? " 'unsafe-eval'" : ''}`,
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  `connect-src 'self'${development ? ' ws:' : ''}`,
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join('; ');

const config: NextConfig = {
  /** Tests build and serve from a folder of their own, beside a running shop. */
  distDir: process.env.REHANG_DIST_DIR ?? '.next',
  poweredByHeader: false,
  /** Types are checked by `npm test`, tests included; a shop that starts need not wait for it. */
  typescript: { ignoreBuildErrors: true },
  reactStrictMode: true,
  serverExternalPackages: [
    'better-sqlite3',
    '@prisma/client',
    '@prisma/adapter-better-sqlite3',
    '@prisma/adapter-pg',
    'pg',
  ],
  headers: () =>
    Promise.resolve([
      {
        source: '/:path*',
        headers: [
          { key: 'Content-Security-Policy', value: contentSecurityPolicy },
          { key: 'X-Content-Type-Options', value: 'nosniff' },
          { key: 'Referrer-Policy', value: 'same-origin' },
          { key: 'X-Frame-Options', value: 'DENY' },
          { key: 'Cross-Origin-Opener-Policy', value: 'same-origin' },
          { key: 'Permissions-Policy', value: 'camera=(), microphone=(), geolocation=()' },
        ],
      },
    ]),
};

export default config;
