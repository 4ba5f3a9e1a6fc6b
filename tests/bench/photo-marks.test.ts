import { beforeEach, describe, expect, test } from 'vitest';
import { db } from '@/lib/db/client';
import { addPhotos } from '@/lib/jobs/add-photo';
import { describePhoto } from '@/lib/jobs/describe-photo';
import { COLUMNS, cellOf, markOf, marksText, middleOf, ROWS, readMarks } from '@/lib/jobs/rules/photo-marks';
import { useDatabase } from '@/tests/database';
import { assessedJob, versionOf } from '@/tests/makers/course';
import { somePhoto } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const now = new Date('2026-11-25T09:00:00Z');

describe('cells of the grid', () => {
  test('every cell is found again from its middle', () => {
    for (const column of COLUMNS) {
      for (const row of ROWS) {
        const middle = middleOf(column, row);
        expect(middle && cellOf(middle)).toEqual({ column, row });
      }
    }
  });

  test.each([
    [{ x: 0, y: 0 }, 'A1'],
    [{ x: 1, y: 1 }, 'H6'],
    [{ x: 0.3, y: 0.5 }, 'C4'],
    [{ x: 0.124, y: 0.17 }, 'A2'],
  ])('%o lies in %s', (point, cell) => {
    const { column, row } = cellOf(point);
    expect(column + row).toBe(cell);
  });

  test.each(['', 'I', 'a'])('there is no column “%s”', (column) => {
    expect(middleOf(column, '1')).toBeNull();
  });
});

describe('a mark', () => {
  const given = { column: 'C', row: '4', x: '', y: '', text: ' crack ' };
  test('stands in the middle of its cell', () => {
    expect(markOf(given)).toEqual({ x: 0.313, y: 0.583, text: 'crack' });
  });
  test('stands where it was tapped, while that is in the chosen cell', () => {
    expect(markOf({ ...given, x: '0.3', y: '0.5111' })).toEqual({ x: 0.3, y: 0.511, text: 'crack' });
    expect(markOf({ ...given, column: 'D', x: '0.3', y: '0.511' })).toEqual({
      x: 0.438,
      y: 0.583,
      text: 'crack',
    });
  });
  test.each(['-1', '2', '1e-3', 'x', '0.3;'])('a point of “%s” is no point', (x) => {
    expect(markOf({ ...given, x, y: '0.5' })).toMatchObject({ x: 0.313 });
  });
  test('without a cell is none', () => {
    expect(markOf({ ...given, column: '' })).toBeNull();
  });
  test('is read back from where it is stored, and nothing else is', () => {
    const marks = [{ x: 0.3, y: 0.5, text: 'crack' }];
    expect(readMarks(JSON.parse(JSON.stringify(marks)))).toEqual(marks);
    expect(readMarks([...marks, { x: 2, y: 0, text: '' }, null, 'x', { x: 0, y: 0 }])).toEqual(marks);
    expect(readMarks(null)).toEqual([]);
    expect(marksText([...marks, { x: 0.99, y: 0, text: '' }])).toBe('1: crack (C4). 2: no words (H1).');
  });
});

describe('a photo of a job', () => {
  useDatabase();
  let jobId = '';
  let photoId = '';
  const begin = madeOnce(async () => {
    const jobId = await assessedJob(await makeWorkshop(now), now);
    await addPhotos({ jobId, purpose: 'finding', photos: [somePhoto()], actor: BENCH, now });
    const photoId = (await db.photo.findFirstOrThrow({ where: { jobId } })).id;
    return { jobId, photoId };
  });
  beforeEach(async () => {
    ({ jobId, photoId } = await begin());
  }, 30_000);

  test('gets a caption and marks, and the history says so', async () => {
    const version = await versionOf(jobId);
    const marks = [{ x: 0.3, y: 0.5, text: 'crack' }];
    await describePhoto({ jobId, version, photoId, caption: 'Socket', marks, actor: BENCH, now });
    expect(await db.photo.findUnique({ where: { id: photoId } })).toMatchObject({ caption: 'Socket', marks });
    const late = describePhoto({ jobId, version, photoId, caption: 'Other', marks: [], actor: BENCH, now });
    await expect(late).rejects.toMatchObject({ code: 'conflict' });
    expect(await db.photo.findUnique({ where: { id: photoId } })).toMatchObject({ caption: 'Socket' });
  });

  test('of another job is not found', async () => {
    const version = await versionOf(jobId);
    const other = describePhoto({
      jobId,
      version,
      photoId: 'none',
      caption: '',
      marks: [],
      actor: BENCH,
      now,
    });
    await expect(other).rejects.toMatchObject({ code: 'not-found' });
  });
});
