'use server';
import { onlyPlain } from '@/app/only-plain';
import type { FormAction } from '@/app/ui/forms/form-state';
import { describePhoto } from '@/lib/jobs/describe-photo';
import { onJob } from '../../action-kit';
import { photoMarksForm } from './photo-marks-schema';

export const describe: FormAction<[number: string, photoId: string]> = async (
  number,
  photoId,
  _before,
  formData,
) => {
  onlyPlain(photoId);
  return onJob(number, formData, {
    permission: 'take-in',
    schema: photoMarksForm,
    part: 'photos',
    work: ({ data, ...call }) => describePhoto({ ...call, ...data, photoId }),
  });
};
