import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { MailToday } from '@/app/workshop/(inside)/today-mail';

const shown = (role: 'bench' | 'front' | 'owner', mail = { failed: 1, bounced: 2, kept: 3 }) =>
  renderToStaticMarkup(<MailToday mail={mail} role={role} />);

test.each(['front', 'owner'] as const)('the %s is led from Today to each kind of mail in trouble', (role) => {
  const html = shown(role);
  for (const state of ['failed', 'bounced', 'kept']) expect(html).toContain(`/workshop/mail?state=${state}`);
  expect(html).not.toContain('front desk');
});

test('the bench is told of mail in trouble and who looks at it, and is led to no page that is for others', () => {
  const html = shown('bench');
  expect(html).not.toContain('href');
  for (const words of ['One message was given up', '2 messages came back.', '3 messages are kept here'])
    expect(html).toContain(words);
  expect(html).toContain('front desk or the owner');
});

test('where all mail went out there is nothing', () => {
  expect(shown('owner', { failed: 0, bounced: 0, kept: 0 })).toBe('');
});
