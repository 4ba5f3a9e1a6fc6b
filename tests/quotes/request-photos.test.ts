import { describe, expect, it } from 'vitest';
import { keptPhotoSlip, photoOfSlip } from '@/lib/quotes/kept-photo';

const NOW = new Date('2026-12-01T10:00:00Z');
const PHOTO = {
  fileKey: 'photos/a.jpg',
  thumbKey: 'photos/a-small.jpg',
  sha256: 'f'.repeat(64),
  width: 2000,
  height: 1500,
};

describe('the slip of a photo that is here already', () => {
  it('gives the photo back for a day', () => {
    const slip = keptPhotoSlip(PHOTO, 'Buchse größer.jpg', NOW);
    expect(photoOfSlip(slip, NOW)).toEqual(PHOTO);
    expect(photoOfSlip(slip, new Date('2026-12-02T10:00:00Z'))).toEqual(PHOTO);
    expect(photoOfSlip(slip, new Date('2026-12-02T10:00:01Z'))).toBeNull();
    expect(decodeURIComponent(slip.split('.').slice(2).join('.'))).toBe('Buchse größer.jpg');
  });

  it('is refused when any letter of it was changed, and when it is none', () => {
    const [facts = '', hash = ''] = keptPhotoSlip(PHOTO, 'a.jpg', NOW).split('.');
    const other = Buffer.from(
      JSON.stringify({ ...PHOTO, fileKey: 'photos/b.jpg', until: NOW.getTime() + 1000 }),
    ).toString('base64url');
    expect(photoOfSlip(`${other}.${hash}.a.jpg`, NOW)).toBeNull();
    for (let at = 0; at < hash.length - 1; at += 1) {
      const changed = hash.slice(0, at) + (hash[at] === 'A' ? 'B' : 'A') + hash.slice(at + 1);
      expect(photoOfSlip(`${facts}.${changed}.a.jpg`, NOW)).toBeNull();
    }
    expect(photoOfSlip(`${facts}.${hash}.b.jpg`, NOW)).toBeNull();
    for (const text of ['', '.', '..', 'x.y.z']) expect(photoOfSlip(text, NOW)).toBeNull();
  });

  it('survives names of half a letter and of great length', () => {
    const slip = keptPhotoSlip(PHOTO, `\ud83d${'n'.repeat(500)}`, NOW);
    expect(photoOfSlip(slip, NOW)).toEqual(PHOTO);
    expect(slip.length).toBeLessThan(900);
  });
});
