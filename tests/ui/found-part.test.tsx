import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { FoundPart } from '@/app/workshop/(inside)/search/found-part';
import type { FoundRow } from '@/lib/jobs/find-everywhere';

const job: FoundRow = {
  place: 'job',
  key: 'J4K7QX290',
  name: 'J4K7QX290',
  what: 'Tideline HW-2: socket replaced',
  whose: 'Maren Holt',
  state: 'on-bench',
  at: new Date('2026-11-26T23:30:00Z'),
  total: 1,
};
const clock = { locale: 'en-GB', timeZone: 'Europe/Berlin' };
const drawn = (row: FoundRow, rows = [row]) =>
  renderToStaticMarkup(<FoundPart place={row.place} rows={rows} q="holt & co" clock={clock} />);

describe('what the search box found', () => {
  test('names a job with its stage, and the day it has where the workshop is', () => {
    const html = drawn(job);
    expect(html).toContain('href="/workshop/jobs/J4K7QX290"');
    expect(html).toContain('On the bench');
    expect(html).toContain('27 Nov');
    expect(html).not.toContain('in the list');
  });

  test('leads to all of them where there are more than it shows', () => {
    const html = drawn({ ...job, total: 12 });
    expect(html).toContain('href="/workshop/jobs?q=holt+%26+co"');
    expect(html).toContain('All 12 in the list');
  });

  test('gives a lot the very day it came, west of Greenwich too, and asks for more of its code', () => {
    const lot: FoundRow = { ...job, place: 'lot', key: 'id-of-it', name: 'LOT-88', state: '' };
    const came = { ...lot, at: new Date('2026-11-02T00:00:00Z'), total: 9 };
    const west = { locale: 'en-GB', timeZone: 'America/New_York' };
    const html = renderToStaticMarkup(<FoundPart place="lot" rows={[came]} q="lot" clock={west} />);
    expect(html).toContain('href="/workshop/parts/lots/id-of-it"');
    expect(html).toContain('2 Nov');
    expect(html).toContain('9 fit; type more of the code.');
    expect(html).not.toContain('Stage');
  });

  test('is nothing where nothing was found', () => {
    expect(drawn(job, [])).toBe('');
  });
});
