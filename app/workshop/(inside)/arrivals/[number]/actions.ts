'use server';
import type { Route } from 'next';
import { redirect } from 'next/navigation';
import { onlyPlain } from '@/app/only-plain';
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
import { MOST_PHOTOS, takeInForm } from './schema';

export async function takeIn(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  onlyPlain(number);
  const staff = await requireStaff(rolesThatMay('take-in'));
  const job = await jobByNumber(number);
  if (!job) return { message: 'There is no job with this number.' };
  const parsed = parseForm(takeInForm, formData, ['arrived', 'photos', 'serialPhoto']);
  if (!parsed.ok) return parsed.state;
  const { version, ...read } = parsed.data;
  const values = { serial: read.serial, arrived: read.arrived, extra: read.extra.join('\n') };
  const ofSerial = await storePhotos(formData.getAll('serialPhoto'), 1);
  if (!ofSerial.ok) return { errors: { serialPhoto: [ofSerial.sentence] }, values };
  const ofUnit = await storePhotos(formData.getAll('photos'), MOST_PHOTOS);
  if (!ofUnit.ok) {
    await ofSerial.forget();
    return { errors: { photos: [ofUnit.sentence] }, values };
  }
  const forget = () => Promise.all([ofSerial.forget(), ofUnit.forget()]);
  const photos = [
    ...ofSerial.photos.map((photo) => ({ ...photo, caption: 'The serial on arrival' })),
    ...ofUnit.photos,
  ];
  try {
    const outcome = await attempt(() =>
      arrive({ jobId: job.id, version, ...read, photos, actor: staffActor(staff), now: now() }),
    );
    if (!outcome.ok) {
      await forget();
      return jobRefused(outcome.refusal, { jobNumber: job.number, version, values });
    }
  } catch (error) {
    await forget();
    throw error;
  }
  redirect(`/workshop/arrivals/${job.number}` as Route);
}
