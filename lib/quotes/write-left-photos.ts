import { instantDaysBefore } from '@/lib/calendar/spans';
import { db } from '@/lib/db/client';
import { deleteFile, filesIn } from '@/lib/files/store';
import { waitingFolder } from './kept-photo';

/** A slip is good for a day, so that nothing of three days ago can still be taken. */
const FROM = 3;
const TO = 9;

/** Removes photos that were sent with a request nobody finished, and returns how many files that were. */
export async function forgetLeftPhotos(now: Date): Promise<number> {
  let forgotten = 0;
  for (let ago = FROM; ago <= TO; ago += 1) {
    const keys = await filesIn(waitingFolder(instantDaysBefore(now, ago)));
    if (keys.length === 0) continue;
    const rows = await db.photo.findMany({
      where: { OR: [{ fileKey: { in: keys } }, { thumbKey: { in: keys } }] },
      select: { fileKey: true, thumbKey: true },
    });
    const taken = new Set(rows.flatMap(({ fileKey, thumbKey }) => [fileKey, thumbKey]));
    for (const key of keys.filter((each) => !taken.has(each))) {
      await deleteFile(key);
      forgotten += 1;
    }
  }
  return forgotten;
}
