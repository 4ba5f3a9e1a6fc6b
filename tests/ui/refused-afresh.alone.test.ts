import { refresh } from 'next/cache';
import { beforeEach, expect, test, vi } from 'vitest';
import { refusedAfresh } from '@/app/refused-afresh';
import { Refusal } from '@/lib/outcome';

vi.mock('next/cache', () => ({ refresh: vi.fn() }));
beforeEach(() => {
  vi.mocked(refresh).mockClear();
});

test('a page whose record changed is made again, and says so', () => {
  const refusal = new Refusal('conflict', 'This price was answered or replaced already.');
  expect(refusedAfresh(refusal, { text: 'typed' })).toEqual({
    message: 'This price was answered or replaced already. The page shows how it stands now.',
    values: { text: 'typed' },
  });
  expect(refresh).toHaveBeenCalledOnce();
});

test('a field that changed says itself what did', () => {
  const refusal = new Refusal('conflict', 'The terms changed. Nothing is agreed to yet.', 'terms');
  expect(refusedAfresh(refusal).errors).toEqual({ terms: ['The terms changed. Nothing is agreed to yet.'] });
  expect(refresh).toHaveBeenCalledOnce();
});

test('any other refusal leaves the page as it is', () => {
  expect(refusedAfresh(new Refusal('invalid', 'Tick the box.'))).toEqual({ message: 'Tick the box.' });
  expect(refresh).not.toHaveBeenCalled();
});
