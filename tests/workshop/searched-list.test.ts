import { describe, expect, test } from 'vitest';
import { listAddress, listedAt } from '@/app/workshop/searched-list/list-address';
import { emptySentence, leadOf } from '@/app/workshop/searched-list/list-words';

const listed = { path: '/workshop/jobs' as const, q: '', page: 1 };

describe('the address of a list', () => {
  test.each([
    ['everything', {}, '/workshop/jobs'],
    ['a search', { q: 'holt & co' }, '/workshop/jobs?q=holt+%26+co'],
    [
      'a later page of a part',
      { page: 3, part: ['stage', 'ready'] as const },
      '/workshop/jobs?stage=ready&page=3',
    ],
    ['all parts', { q: 'mf2', part: ['stage', null] as const }, '/workshop/jobs?q=mf2'],
  ])('says %s', (_name, asked, address) => {
    expect(listAddress({ ...listed, ...asked })).toBe(address);
  });

  test('is read as it was written; a page that is none is the first', async () => {
    const read = (q: string, page: string) => listedAt('/workshop/jobs', Promise.resolve({ q, page }));
    expect(await read(' holt ', '3')).toEqual({ path: '/workshop/jobs', q: 'holt', page: 3 });
    expect((await read('', '-2')).page).toBe(1);
  });
});

describe('the words above a list', () => {
  test.each([
    [{ page: 1 }, 4, '4 jobs.'],
    [{ page: 1 }, 60, '60 jobs, here 1 to 25.'],
    [{ page: 3, q: 'holt' }, 60, '60 jobs for “holt”, here 51 to 60.'],
    [{ page: 9 }, 60, '60 jobs.'],
  ])('%o of %i: %s', (asked, total, words) => {
    expect(leadOf({ listed: { ...listed, ...asked }, found: `${total} jobs`, total, perPage: 25 })).toBe(
      words,
    );
  });
});

describe('what is said of a search that found nothing', () => {
  const say = { nothing: 'nothing', number: 'number', text: 'text' };
  test.each([
    ['', 'nothing'],
    ['holt', 'text'],
    ['J4K7QX290', 'number'],
  ])('%s: %s', (q, words) => {
    expect(emptySentence(q, say)).toBe(words);
  });

  test('a number with one character wrong is told as such', () => {
    expect(emptySentence('J4K7QX291', say)).toContain('One character looks wrong');
  });
});
