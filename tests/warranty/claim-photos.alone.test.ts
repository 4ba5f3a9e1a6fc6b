import sharp from 'sharp';
import { beforeAll, expect, it, vi } from 'vitest';
import { claim } from '@/app/(front)/certificate/[number]/actions';
import type { ClaimState } from '@/app/(front)/certificate/[number]/claim-state';
import { now } from '@/lib/clock';
import { db } from '@/lib/db/client';
import { useDatabase } from '@/tests/database';
import { SERIAL } from '@/tests/makers/job';
import { makeCertificate } from '@/tests/makers/walk';
import { makeWorkshop } from '@/tests/makers/workshop';

vi.mock('next/headers', () => ({ headers: async () => new Headers() }));
vi.mock('next/navigation', () => ({
  redirect: (to: string) => {
    throw new Error(`led to ${to}`);
  },
}));

useDatabase();

const A_MONTH = 30 * 86_400_000;

let number = '';
beforeAll(async () => {
  const sent = new Date(now().getTime() - A_MONTH);
  ({ number } = await makeCertificate(await makeWorkshop(sent), sent));
}, 30_000);

const picture = async (background: string, name: string) => {
  const drawn = await sharp({ create: { width: 60, height: 40, channels: 3, background } })
    .jpeg()
    .toBuffer();
  return new File([new Uint8Array(drawn)], name, { type: 'image/jpeg' });
};

function form(email: string, more: Record<string, (string | File)[]>): FormData {
  const sent = new FormData();
  const fields = {
    phase: 'open',
    serial: SERIAL,
    symptom: 'Does not charge',
    battery: 'healthy',
    data: 'saved',
    name: 'Mira Oakenfold',
    email,
    address1: '17 Lantern Row',
    postcode: 'OT2 9LN',
    town: 'Otterby',
    country: 'GB',
  };
  for (const [name, value] of Object.entries(fields)) sent.set(name, value);
  for (const [name, values] of Object.entries(more)) for (const value of values) sent.append(name, value);
  return sent;
}

const slipsOf = (state: ClaimState) => [state.values?.kept ?? []].flat();

it('two good photos of a claim stay beside a bad one and a slip of the pen, and open it with the next press', async () => {
  const photos = [
    await picture('#804020', 'socket.jpg'),
    new File(['not a picture'], 'note.txt', { type: 'text/plain' }),
    await picture('#204080', 'pads.jpg'),
  ];
  const refused = await claim(number, 1, {}, form('mira', { photos }));
  expect(refused.phase).toBe('open');
  expect(Object.keys(refused.errors ?? {}).sort()).toEqual(['email', 'photos']);
  expect(refused.errors?.photos?.[0]).toMatch(/^note\.txt: /);
  expect(slipsOf(refused).map((slip) => slip.split('.').slice(2).join('.'))).toEqual([
    'socket.jpg',
    'pads.jpg',
  ]);
  expect(await db.claim.count()).toBe(0);

  const changed = await claim(number, 1, {}, form('mira', { kept: slipsOf(refused), change: ['yes'] }));
  expect(changed.phase).toBe('ask');
  expect(slipsOf(changed)).toEqual(slipsOf(refused));

  const again = form('mira@example.org', { kept: slipsOf(changed) });
  await expect(claim(number, 1, {}, again)).rejects.toThrow(/^led to \/job\/.+\?booked=claim$/);
  const opened = await db.claim.findFirstOrThrow({ select: { jobId: true } });
  expect(await db.photo.count({ where: { jobId: opened.jobId, purpose: 'claim' } })).toBe(2);

  // The claim is over, and somebody presses the button of the page they went back to.
  await db.claim.updateMany({ data: { state: 'closed' } });
  const spent = await claim(number, 1, {}, form('mira@example.org', { kept: slipsOf(changed) }));
  expect(spent.errors?.photos?.[0]).toMatch(/another form already/);
  expect(await db.claim.count()).toBe(1);
});
