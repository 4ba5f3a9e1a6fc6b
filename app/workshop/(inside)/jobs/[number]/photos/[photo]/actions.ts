'use server';
import { onlyPlain } from '@/app/only-plain';
import type { FormState } from '@/app/ui/forms/form-state';
import { describePhoto } from '@/lib/jobs/describe-photo';
import { onJob } from '../../action-kit';
import { photoMarksForm } from './photo-marks-schema';

export async function describe(
  number: string,
  photoId: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(photoId);
  return onJob({
    permission: 'take-in',
    number,
    schema: photoMarksForm,
    formData,
    part: 'photos',
    work: ({ data, ...call }) => describePhoto({ ...call, ...data, photoId }),
  });
}
