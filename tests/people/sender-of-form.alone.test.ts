import { beforeEach, expect, test, vi } from 'vitest';
import { senderOf } from '@/app/workshop/sender-of-form';
import { GET } from '@/app/workshop/session/route';
import { db } from '@/lib/db/client';
import { resetDatabase, useDatabase } from '@/tests/database';
import { headersAfterSignIn, makeStaff } from './staff';

const sent = vi.hoisted(() => ({ headers: new Headers() }));
vi.mock('next/headers', () => ({ headers: async () => sent.headers }));
vi.mock('next/navigation', () => ({
  redirect: (to: string) => {
    throw new Error(`led to ${to}`);
  },
}));

useDatabase();
beforeEach(resetDatabase);

async function mira() {
  const { id, email } = await makeStaff('Mira', 'bench');
  sent.headers = await headersAfterSignIn(email);
  sent.headers.set('next-action', 'an action');
  return id;
}

function typed(): FormData {
  const form = new FormData();
  form.set('reason', 'Two pads lifted.\r\nSee the photo.');
  form.append('photos', new File(['light'], 'pads.jpg'));
  return form;
}

async function howLong(address = 'http://localhost/workshop/session') {
  return (await GET(new Request(address))).json();
}

test('a form sent by somebody signed in is theirs', async () => {
  const id = await mira();
  expect(await senderOf('bench', typed())).toMatchObject({ ok: true, staff: { id } });
  await expect(senderOf('settings', typed())).rejects.toThrow('led to /workshop/not-yours');
});

test('whose session ended meanwhile has the form back with what was typed, and where to sign in', async () => {
  await mira();
  await db.session.deleteMany({});
  const sender = await senderOf('bench', typed(), ['photos']);
  if (sender.ok) throw new Error('a session that has ended sends nothing');
  expect(sender.state.message).toMatch(/signed out.*nothing is saved/);
  expect(sender.state.first?.href).toBe('/workshop/sign-in');
  expect(sender.state.values).toEqual({ reason: 'Two pads lifted.\nSee the photo.', photos: ['pads.jpg'] });
});

test('without script they are led to sign in, since no page is made for them to go on with', async () => {
  await mira();
  await db.session.deleteMany({});
  sent.headers.delete('next-action');
  await expect(senderOf('bench', typed())).rejects.toThrow('led to /workshop/sign-in');
});

test('asking how long a session lasts is no use of it, staying is', async () => {
  await mira();
  const rested = new Date(Date.now() - (4 * 60 - 8) * 60_000);
  await db.session.updateMany({ data: { updatedAt: rested } });
  expect((await howLong()).secondsLeft).toBeLessThanOrEqual(8 * 60);
  const near = await howLong();
  expect(near.secondsLeft).toBeGreaterThan(7 * 60);
  expect(near).toMatchObject({ isLast: false, at: expect.stringMatching(/^\d\d:\d\d$/) });
  expect((await db.session.findFirstOrThrow()).updatedAt).toEqual(rested);

  const stays = await howLong('http://localhost/workshop/session?stay');
  expect(stays.secondsLeft).toBeGreaterThan(239 * 60);
  expect((await howLong()).secondsLeft).toBeGreaterThan(239 * 60);
});

test('a session that was left too long is over, whether asked or stayed for', async () => {
  await mira();
  await db.session.updateMany({ data: { updatedAt: new Date(Date.now() - 240 * 60_000) } });
  await expect(howLong()).rejects.toThrow('led to /workshop/sign-in');
  await expect(howLong('http://localhost/workshop/session?stay')).rejects.toThrow('led to /workshop/sign-in');
});
