import 'server-only';
import type { z } from 'zod';
import type { FormState } from '@/app/ui/forms/form-state';
import type { ParsedForm } from '@/app/ui/forms/parse-form';
import { deletePhoto, PHOTO_REFUSALS, storePhoto } from '@/lib/files/photos';
import type { NewPhoto } from '@/lib/jobs/write-photos';
import { keptPhotoSlip, photoOfSlip, waitingFolder } from '@/lib/quotes/kept-photo';

export type FormPhotos = {
  /** every photo that is here, old and new, each once */
  photos: NewPhoto[];
  /** their slips, for the form to carry on with when something else is wrong */
  kept: string[];
  problem: string | null;
};

/**
 * The photos of a form that must not be sent twice on a weak signal. What came with this post is stored at once; what is
 * here from before comes back as slips. When the form is refused, `kept` goes back to the page, and sending the same
 * form again carries on from there.
 */
export async function formPhotos(formData: FormData, o: { most: number; now: Date }): Promise<FormPhotos> {
  const found = new Map<string, { photo: NewPhoto; slip: string }>();
  let problem: string | null = null;
  for (const slip of formData.getAll('kept').filter((entry) => typeof entry === 'string')) {
    const photo = photoOfSlip(slip, o.now);
    if (photo) found.set(photo.fileKey, { photo, slip });
    else problem = 'A photo was here too long ago. Choose it again.';
  }
  const files = formData
    .getAll('photos')
    .filter((entry): entry is File => entry instanceof File && entry.size > 0);
  // Sent again with the form while it was still on its way ahead of it.
  const hereBefore = new Set([...found.values()].map(({ photo }) => photo.sha256));
  // More than could ever be taken is not even looked at.
  for (const file of files.slice(0, o.most)) {
    const stored = await storePhoto(new Uint8Array(await file.arrayBuffer()), waitingFolder(o.now));
    if (!stored.ok) {
      problem = `${file.name}: ${PHOTO_REFUSALS[stored.reason]}`;
      continue;
    }
    const { ok: _, ...photo } = stored;
    if (hereBefore.has(photo.sha256)) await deletePhoto(photo);
    else found.set(photo.fileKey, { photo, slip: keptPhotoSlip(photo, file.name, o.now) });
  }
  if (files.length > o.most || found.size > o.most) {
    problem = `Send ${o.most} photos at most. Untick those that matter least.`;
  }
  const all = [...found.values()];
  return { photos: all.map(({ photo }) => photo), kept: all.map(({ slip }) => slip), problem };
}

/** What is wrong with the fields and the photos of a form together; null where nothing is. */
export function photoFormProblem<S extends z.ZodType>(
  parsed: ParsedForm<S>,
  problem: FormPhotos['problem'],
): Pick<FormState, 'errors' | 'message'> | null {
  if (parsed.ok) return problem ? { errors: { photos: [problem] } } : null;
  const { errors, message } = parsed.state;
  return { errors: { ...errors, ...(problem ? { photos: [problem] } : {}) }, message };
}
