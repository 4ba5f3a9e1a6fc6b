import { readdirSync, readFileSync } from 'node:fs';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { formPhotos, photoFormProblem } from '@/app/form-photos';
import { withStoredPhotos } from '@/app/store-photos';
import { parseForm } from '@/app/ui/forms/parse-form';
import { keepUploadedList, MOST_MEGABYTES } from '@/lib/catalogue/uploaded-list';
import { PHOTO_BYTES, type StoredPhoto } from '@/lib/files/photos';
import { MEGABYTE } from '@/lib/files/rules/limits';
import { hasFile } from '@/lib/files/store';

const photo = async (background = '#7c7464') =>
  sharp({ create: { width: 48, height: 32, channels: 3, background } })
    .jpeg()
    .toBuffer();
const file = (bytes: Uint8Array, name: string) => new File([new Uint8Array(bytes)], name);
function formOf(photos: readonly File[]): FormData {
  const form = new FormData();
  for (const each of photos) form.append('photos', each);
  return form;
}
const large = async () => file(Buffer.concat([await photo(), Buffer.alloc(PHOTO_BYTES)]), 'large.jpg');

/** Every form with a field for files: its page, the action behind it, and by what that action takes them. */
const UPLOADS: Record<string, [action: string, taken: string]> = {
  '(front)/certificate/[number]/open-half.tsx': [
    '(front)/certificate/[number]/actions.ts',
    'formPhotos(formData',
  ],
  '(front)/job/[token]/messages-part.tsx': ['(front)/job/[token]/on-link.ts', 'formPhotos(formData'],
  '(front)/job/[token]/postage-part.tsx': ['(front)/job/[token]/on-link.ts', 'formPhotos(formData'],
  '(front)/quote/[token]/write-part.tsx': ['(front)/quote/[token]/actions.ts', 'formPhotos(formData'],
  '(front)/quote/ask/page.tsx': ['(front)/quote/ask/actions.ts', 'formPhotos(formData'],
  'workshop/(inside)/arrivals/[number]/take-in-form.tsx': [
    'workshop/(inside)/arrivals/[number]/actions.ts',
    "withStoredPhotos(formData, { field: 'serialPhoto'",
  ],
  'workshop/(inside)/arrivals/new/page.tsx': [
    'workshop/(inside)/arrivals/new/actions.ts',
    "withStoredPhotos(formData, { field: 'photos'",
  ],
  'workshop/(inside)/catalogue/file/page.tsx': [
    'workshop/(inside)/catalogue/file/actions.ts',
    'keepUploadedList(',
  ],
  'workshop/(inside)/claims/new/claim-at-desk-form.tsx': [
    'workshop/(inside)/claims/new/actions.ts',
    "withStoredPhotos(formData, { field: 'photos'",
  ],
  'workshop/(inside)/claims/[number]/inspection-part.tsx': [
    'workshop/(inside)/claims/[number]/actions.ts',
    "withStoredPhotos(formData, { field: 'photo'",
  ],
  'workshop/(inside)/jobs/[number]/findings-part.tsx': [
    'workshop/(inside)/jobs/[number]/actions.ts',
    "withStoredPhotos(formData, { field: 'photos'",
  ],
  'workshop/(inside)/jobs/[number]/photos-part.tsx': [
    'workshop/(inside)/jobs/[number]/actions.ts',
    "withStoredPhotos(formData, { field: 'photos'",
  ],
};

test('every form with files takes them by one of the three ways tried below', () => {
  const pages = readdirSync('app', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.tsx') && !name.startsWith('ui/'))
    .filter((name) => /<(FileField|PhotosField)\b/.test(readFileSync(`app/${name}`, 'utf8')));
  expect(pages.sort()).toEqual(Object.keys(UPLOADS).sort());
  for (const [action, taken] of Object.values(UPLOADS))
    expect(readFileSync(`app/${action}`, 'utf8'), action).toContain(taken);
});

test('a photo that is too large is refused by name, with those beside it', async () => {
  const take = (most: number, ...entries: File[]) =>
    withStoredPhotos(formOf(entries), { field: 'photos', most }, async (photos) => photos.length);
  await expect(take(6, file(await photo(), 'whole.jpg'), await large())).rejects.toMatchObject({
    message: expect.stringMatching(/^large\.jpg: .*larger than 15 MB/),
    field: 'photos',
  });
  const two = [file(await photo(), 'a.jpg'), file(await photo(), 'b.jpg')];
  await expect(take(1, ...two)).rejects.toMatchObject({ message: 'Choose 1 photo at most.' });
  expect(await take(2, ...two)).toBe(2);
});

test('photos of a form whose use case fails are removed again', async () => {
  let stored: StoredPhoto[] = [];
  const form = formOf([file(await photo(), 'whole.jpg')]);
  const failing = withStoredPhotos(form, { field: 'photos', most: 1 }, async (photos) => {
    stored = photos;
    throw new Error('no answer');
  });
  await expect(failing).rejects.toThrow('no answer');
  expect(stored).toHaveLength(1);
  for (const { fileKey } of stored) expect(await hasFile(fileKey)).toBe(false);
});

test('where photos are carried on from form to form, those that were taken stay', async () => {
  const form = formOf([
    file(await photo(), 'whole.jpg'),
    await large(),
    file(await photo('#2f4a3c'), 'pads.jpg'),
  ]);
  const { photos, kept, problem } = await formPhotos(form, { most: 8, now: new Date() });
  expect(problem).toMatch(/^large\.jpg: .*larger than 15 MB/);
  expect([photos.length, kept.length]).toEqual([2, 2]);
});

test('what is wrong with a photo is said beside what is wrong with a field', () => {
  const name = z.object({ name: z.string({ error: 'Type your name' }) });
  const [empty, filled] = [new FormData(), new FormData()];
  filled.set('name', 'Mira Oakenfold');
  const photos = ['large.jpg: too large'];
  expect(photoFormProblem(parseForm(name, filled), null)).toBeNull();
  expect(photoFormProblem(parseForm(name, filled), photos[0] ?? null)).toEqual({ errors: { photos } });
  expect(photoFormProblem(parseForm(name, empty), photos[0] ?? null)?.errors).toEqual({
    name: ['Type your name'],
    photos,
  });
});

test('a catalogue that is too large is refused at its field before it is read', async () => {
  const bytes = new Uint8Array(MOST_MEGABYTES * MEGABYTE + 1);
  await expect(keepUploadedList('nobody', bytes)).rejects.toMatchObject({ code: 'invalid', field: 'file' });
});
