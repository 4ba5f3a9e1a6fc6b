import { beforeEach, expect, test } from 'vitest';
import { config } from '@/lib/config';
import { auth } from '@/lib/people/auth';
import { resetDatabase, useDatabase } from '@/tests/database';
import { makeStaff, PASSWORD, withCookiesOf } from './staff';

useDatabase();
beforeEach(resetDatabase);
// Read when somebody signs in for the first time, as in an app whose address is encrypted from its start.
config.appUrl = 'https://mend.example.org';

// RFC 6265bis, 4.1.3.2: a browser takes a name that begins __Host- only with Secure, with the path / and without a domain.
test('behind an https address every cookie has a name that a neighbour cannot set, and opens the session', async () => {
  const { id, email } = await makeStaff('Mira', 'bench');
  const { headers } = await auth().api.signInEmail({
    body: { email, password: PASSWORD },
    headers: new Headers(),
    returnHeaders: true,
  });
  const cookies = headers.getSetCookie();
  expect(cookies.length).toBeGreaterThan(0);
  for (const cookie of cookies) {
    expect(cookie).toMatch(/^__Host-workshop\./);
    expect(cookie).toMatch(/; Path=\//);
    expect(cookie).toMatch(/; Secure/);
    expect(cookie).toMatch(/; HttpOnly/);
    expect(cookie).toMatch(/; SameSite=Lax/i);
    expect(cookie).not.toMatch(/; Domain=/i);
  }
  const found = await auth().api.getSession({ headers: withCookiesOf(headers) });
  expect(found?.user.id).toBe(id);
});
