import sharp from 'sharp';
import { beforeEach, describe, expect, it } from 'vitest';
import { storePhoto } from '@/lib/files/photos';
import { filesIn, hasFile } from '@/lib/files/store';
import { waitingFolder } from '@/lib/quotes/kept-photo';
import { forgetLeftPhotos } from '@/lib/quotes/write-left-photos';
import { resetDatabase, useDatabase } from '@/tests/database';
import { makeRequest } from '@/tests/makers/quote';
import { makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const NOW = new Date('2026-12-01T10:00:00Z');
const after = (days: number) => new Date(NOW.getTime() + days * 86_400_000);

beforeEach(async () => {
  await resetDatabase();
  await makeWorkshop(NOW);
}, 60_000);

async function photo(shade: number) {
  const bytes = await sharp({
    create: { width: 40, height: 30, channels: 3, background: { r: shade, g: shade, b: shade } },
  })
    .jpeg()
    .toBuffer();
  const stored = await storePhoto(new Uint8Array(bytes), waitingFolder(NOW));
  if (!stored.ok) throw new Error('a photo was not stored');
  return stored;
}

describe('photos that no request took', () => {
  it('are forgotten after three days, and those that were taken stay', async () => {
    const left = await photo(10);
    const taken = await photo(90);
    await makeRequest({ now: NOW, photos: [taken] });
    expect(await filesIn(waitingFolder(NOW))).toHaveLength(4);
    expect(await forgetLeftPhotos(after(2))).toBe(0);
    expect(await forgetLeftPhotos(after(3))).toBe(2);
    expect(await forgetLeftPhotos(after(4))).toBe(0);
    expect(await hasFile(left.fileKey)).toBe(false);
    expect([await hasFile(taken.fileKey), await hasFile(taken.thumbKey)]).toEqual([true, true]);
  });
});
