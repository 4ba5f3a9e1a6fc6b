import type { MetadataRoute } from 'next';

/** Only the pages written for anyone may be indexed; private links and the workshop stay out. */
export default function robots(): MetadataRoute.Robots {
  return {
    rules: {
      userAgent: '*',
      allow: ['/$', '/prices', '/terms', '/privacy', '/track$', '/certificate$'],
      disallow: '/',
    },
  };
}
