import { renderToStaticMarkup } from 'react-dom/server';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import SearchPage from '@/app/workshop/(inside)/search/page';
import { db } from '@/lib/db/client';
import type { Role } from '@/lib/people/rules/roles';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { makeRequest } from '@/tests/makers/quote';
import { makeWorkshop } from '@/tests/makers/workshop';

const who = vi.hoisted(() => ({ role: 'owner' as string }));
vi.mock('@/app/workshop/who', () => ({ requireStaff: async () => who }));

useDatabase();

const NOW = new Date('2026-11-26T09:00:00Z');
let numbers: string[];
let quote: string;
let lotId: string;

beforeAll(async () => {
  const world = await makeWorkshop(NOW);
  lotId = world.lotId;
  await db.lot.update({ where: { id: lotId }, data: { code: 'LOT-88/b' } });
  const first = await makeBooking({ repairId: world.repairId, now: NOW, serial: 'HW2-20991-C' });
  const second = await makeBooking({ repairId: world.repairId, now: NOW, serial: 'HW2-31555-D' });
  numbers = [first.number, second.number];
  quote = (await makeRequest({ now: NOW })).number;
}, 60_000);

/** The page in HTML, or the address that it leads on to. */
async function answerTo(q: string, role: Role = 'owner'): Promise<string> {
  who.role = role;
  try {
    return renderToStaticMarkup(await SearchPage({ searchParams: Promise.resolve({ q }) }));
  } catch (thrown) {
    const digest = String((thrown as { digest?: unknown }).digest ?? '');
    if (!digest.startsWith('NEXT_REDIRECT')) throw thrown;
    return digest.split(';')[2] ?? '';
  }
}

describe('the page of the search box', () => {
  it('leads on where one thing alone is meant, and to the jobs where nothing was typed', async () => {
    expect(await answerTo(numbers[0] ?? '')).toBe(`/workshop/jobs/${numbers[0]}`);
    expect(await answerTo('31555')).toBe(`/workshop/jobs/${numbers[1]}`);
    expect(await answerTo('+44 7700 900412')).toBe(`/workshop/quotes/${quote}`);
    expect(await answerTo('lot-88')).toBe(`/workshop/parts/lots/${lotId}`);
    expect(await answerTo(' ')).toBe('/workshop/jobs');
  });

  it('leads nobody to an invoice who may not see it', async () => {
    expect(await answerTo('2026-00001', 'front')).toBe('/workshop/money/invoices/2026-00001');
    expect(await answerTo('2026-00001', 'bench')).toContain('Nothing fits.');
  });

  it('shows what it found, and the way to the customers', async () => {
    const html = await answerTo('Sandmouth');
    expect(html).toContain('<h1>Find</h1>');
    for (const number of numbers) expect(html).toContain(`href="/workshop/jobs/${number}"`);
    expect(html).toContain('href="/workshop/customers?q=Sandmouth"');
    expect(html).not.toContain('Prices asked for');
  });

  it('shows serials that are close where none fits, and says of a number that it is misspelt', async () => {
    expect(await answerTo('HW2-2O991-C')).toContain('Close to this serial');
    expect(await answerTo('J4K7QX299')).toContain('One character looks wrong.');
  });
});
