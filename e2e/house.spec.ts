import { place } from './world/place';
import { expect, test } from './world/test';

test.describe('the house itself', () => {
  test('says that it lives and that its database answers', async ({ request }) => {
    const alive = await request.get('/health');
    expect(await alive.json()).toEqual({ status: 'alive' });
    const ready = await request.get('/ready');
    expect(await ready.json()).toEqual({ status: 'ready' });
    expect(ready.headers()['cache-control']).toBe('no-store');
  });

  test('lets only its own scripts and styles run, and tells nobody else where a visitor was', async ({
    page,
  }) => {
    const answer = await page.goto('/');
    const headers = answer?.headers() ?? {};
    const policy = headers['content-security-policy'] ?? '';
    expect(policy).toMatch(/script-src 'self' 'nonce-[^']+' 'strict-dynamic'/);
    expect(policy).not.toMatch(/unsafe-eval|script-src[^;]*unsafe-inline/);
    expect(policy).toContain("frame-ancestors 'none'");
    expect(headers).toMatchObject({ 'referrer-policy': 'same-origin', 'x-content-type-options': 'nosniff' });
    expect(headers['x-powered-by']).toBeUndefined();
    // Plain http on this machine: a promise of https would lock visitors out.
    expect(headers['strict-transport-security']).toBeUndefined();
  });

  test('answers an unknown address with a page of its own', async ({ page, tolerate }) => {
    tolerate(/404 \(Not Found\)/);
    const answer = await page.goto('/no-such-page');
    expect(answer?.status()).toBe(404);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    await expect(page.getByRole('main').getByRole('link').first()).toBeVisible();
  });

  test('refuses a form that another site sends', async ({ request }) => {
    const answer = await request.post('/workshop/sign-in', {
      headers: { origin: 'https://elsewhere.example.org', 'next-action': '0'.repeat(42) },
      multipart: { email: 'a@example.org' },
      maxRedirects: 0,
    });
    expect(answer.ok()).toBe(false);
    expect(new URL(answer.url()).origin).toBe(place.origin);
  });
});
