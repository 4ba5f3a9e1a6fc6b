'use server';
import type { Route } from 'next';
import { redirect } from 'next/navigation';
import { storePhotos } from '@/app/store-photos';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { jobRefused } from '@/app/workshop/job-refused';
import { staffActor } from '@/app/workshop/staff-actor';
import { requireStaff } from '@/app/workshop/who';
import { now } from '@/lib/clock';
import { arrive } from '@/lib/jobs/arrive';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { attempt } from '@/lib/outcome';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { takeInForm } from './schema';

const MOST_PHOTOS = 6;

export async function takeIn(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  const staff = await requireStaff(rolesThatMay('take-in'));
  const job = await jobByNumber(number);
  if (!job) return { message: 'There is no job with this number.' };
  const parsed = parseForm(takeInForm, formData, ['arrived', 'photos']);
  if (!parsed.ok) return parsed.state;
  const { version, ...read } = parsed.data;
  const values = { serial: read.serial, arrived: read.arrived, extra: read.extra.join('\n') };
  const stored = await storePhotos(formData.getAll('photos'), MOST_PHOTOS);
  if (!stored.ok) return { errors: { photos: [stored.sentence] }, values };
  const outcome = await attempt(() =>
    arrive({
      jobId: job.id,
      version,
      ...read,
      photos: stored.photos,
      actor: staffActor(staff),
      now: now(),
    }),
  );
  if (!outcome.ok) {
    await stored.forget();
    return jobRefused(outcome.refusal, { jobNumber: job.number, version, values });
  }
  redirect(`/workshop/arrivals/${job.number}` as Route);
}
