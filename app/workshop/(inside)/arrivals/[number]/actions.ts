'use server';
import { redirect } from 'next/navigation';
import { onlyPlain } from '@/app/only-plain';
import { withStoredPhotos } from '@/app/store-photos';
import type { FormAction } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { jobRefused } from '@/app/workshop/job-refused';
import { senderOf } from '@/app/workshop/sender-of-form';
import { staffActor } from '@/app/workshop/staff-actor';
import { now } from '@/lib/clock';
import { arrive } from '@/lib/jobs/arrive';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { takeInOpened } from '@/lib/jobs/take-in-opened';
import { attempt } from '@/lib/outcome';
import { takeInForm } from './schema';

export const takeIn: FormAction<[number: string]> = async (number, _before, formData) => {
  onlyPlain(number);
  const sender = await senderOf('take-in', formData, ['arrived', 'photos', 'serialPhoto']);
  if (!sender.ok) return sender.state;
  const { staff } = sender;
  const job = await jobByNumber(number);
  if (!job) return { message: 'There is no job with this number.' };
  const parsed = parseForm(takeInForm, formData, ['arrived', 'photos', 'serialPhoto']);
  if (!parsed.ok) return parsed.state;
  const { version, opened: of, openedVersion, ...read } = parsed.data;
  const opened = of === undefined ? null : await jobByNumber(of);
  if (of !== undefined && (!opened || openedVersion === undefined))
    return { message: 'There is no job with this number.' };
  const outcome = await attempt(() =>
    withStoredPhotos(formData, { field: 'serialPhoto', most: 1 }, (ofSerial) =>
      withStoredPhotos(formData, { field: 'photos', most: MOST_PHOTOS }, (ofUnit) => {
        const arrival = {
          jobId: job.id,
          version,
          ...read,
          photos: ofUnit,
          serialPhotos: ofSerial,
          actor: staffActor(staff),
          now: now(),
        };
        return opened && openedVersion !== undefined
          ? takeInOpened({ ...arrival, opened: { jobId: opened.id, version: openedVersion } })
          : arrive(arrival);
      }),
    ),
  );
  if (!outcome.ok)
    return jobRefused(outcome.refusal, {
      ...(opened && openedVersion !== undefined && opened.version !== openedVersion
        ? { jobNumber: opened.number, version: openedVersion }
        : { jobNumber: job.number, version }),
      values: typedValues(formData, ['arrived']),
    });
  redirect(`/workshop/arrivals/${job.number}`);
};
