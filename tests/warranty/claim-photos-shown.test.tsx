import { renderToStaticMarkup } from 'react-dom/server';
import { beforeEach, expect, test } from 'vitest';
import { ClaimPart } from '@/app/(front)/job/[token]/claim-part';
import { FindingsPart } from '@/app/(front)/job/[token]/findings-part';
import { db } from '@/lib/db/client';
import { openClaimAtDesk } from '@/lib/warranty/open-claim-at-desk';
import { readWorkshop } from '@/lib/workshop/records';
import { useDatabase } from '@/tests/database';
import { ADDRESS, SERIAL } from '@/tests/makers/job';
import { jobNow, makeCertificate, makeClaim, somePhoto } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const SENT = new Date('2026-12-03T16:00:00Z');
const NOW = new Date('2027-02-08T10:00:00Z');

useDatabase();

const begin = madeOnce(async () => (await makeCertificate(await makeWorkshop(SENT), SENT)).number);
let number = '';
beforeEach(async () => {
  number = await begin();
}, 60_000);

/** Labels and captions of a claim's photos, as its customer's page shows them. */
async function shown(jobId: string) {
  const part = { job: await jobNow(jobId), token: 'made-up', workshop: await readWorkshop() };
  const html = renderToStaticMarkup(
    <>
      <ClaimPart {...part} />
      <FindingsPart {...part} isAsked={false} />
    </>,
  );
  const all = (pattern: RegExp) => [...html.matchAll(pattern)].map((found) => found[1]);
  return [all(/class="photo-strip" aria-label="([^"]*)"/g), all(/<figcaption>([^<]*)<\/figcaption>/g)];
}

async function atDesk(isHere: boolean): Promise<string> {
  const { claimNumber } = await openClaimAtDesk({
    ...{ certificateNumber: number, serial: SERIAL, symptom: 'Does not charge', details: '' },
    ...{ batteryAnswer: 'healthy', dataAnswer: 'saved', address: ADDRESS, extra: [], reason: '' },
    ...{ isHere, photos: [somePhoto()], actor: BENCH, now: NOW },
  });
  return (await db.claim.findUniqueOrThrow({ where: { number: claimNumber } })).jobId;
}

test('photos that a customer added to their claim are theirs', async () => {
  const { jobId } = await makeClaim({ number, now: NOW, photos: [somePhoto()] });
  expect(await shown(jobId)).toEqual([['Your photos'], ['Your photo']]);
});

test('photos that the workshop took of a unit that came with its claim are of the unit, not the customer’s', async () => {
  expect(await shown(await atDesk(true))).toEqual([['Photos of your unit'], ['Your unit as it arrived']]);
});

test('what reached the workshop by letter is not called a photo of the customer’s', async () => {
  expect(await shown(await atDesk(false))).toEqual([['What you sent us'], ['What you sent us']]);
});
