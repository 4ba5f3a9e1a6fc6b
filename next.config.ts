import type { NextConfig } from 'next';

// A form carries up to eight photographs of 15 MB; lib/files refuses what is larger, and each form what is more.
const largestBody = '132mb';

const nextConfig: NextConfig = {
  typedRoutes: true,
  // `npm test` checks types, all of them; a start should not wait for it.
  typescript: { ignoreBuildErrors: true },
  poweredByHeader: false,
  // Titles stay in the head, where readers without script and without patience look for them.
  htmlLimitedBots: /.*/,
  experimental: {
    serverActions: { bodySizeLimit: largestBody },
    // proxy.ts sees every request: without this limit a larger body would be cut in silence at 10 MB.
    proxyClientMaxBodySize: largestBody,
  },
  serverExternalPackages: ['pg', 'pg-boss', '@prisma/adapter-pg'],
  async headers() {
    return [
      { source: '/:path*', headers: everywhere },
      // Addresses that proxy.ts leaves alone: nothing there is a page, not even the answer that nothing is there.
      ...['/_next/static/:path*', '/_next/image', '/favicon.ico', '/robots.txt'].map((source) => ({
        source,
        headers: [{ key: 'Content-Security-Policy', value: "default-src 'none'; frame-ancestors 'none'" }],
      })),
    ];
  },
};

const everywhere = [
  { key: 'X-Content-Type-Options', value: 'nosniff' },
  { key: 'X-Frame-Options', value: 'DENY' },
  // Not no-referrer: browsers would then send "Origin: null" with forms, which server actions refuse.
  { key: 'Referrer-Policy', value: 'same-origin' },
  { key: 'Permissions-Policy', value: 'camera=(self), geolocation=(), microphone=(), payment=()' },
  { key: 'Cross-Origin-Opener-Policy', value: 'same-origin' },
  { key: 'Cross-Origin-Resource-Policy', value: 'same-origin' },
];

export default nextConfig;
