import { drawLetter } from '@/emails/draw-letter';
import { writeLetter } from '@/emails/letters';
import type { Sample } from '@/emails/samples/sample';
import { sampleSetting } from '@/emails/samples/setting';
import { config } from '@/lib/config';
import { readWorkshop } from '@/lib/workshop/records';
import { type DrawnMail, drawForStaff, senderOf, workshopPart } from './draw';
import { findMail, type StoredMail } from './records';

export type Preview = { mail: StoredMail; drawn: DrawnMail | null };

/** A message as it would leave now, but for its private link, which opens nothing here; `drawn` is null when its records no longer allow it. */
export async function previewMail(id: string): Promise<Preview | null> {
  const mail = await findMail(id);
  if (!mail) return null;
  return { mail, drawn: await drawForStaff(mail).catch(() => null) };
}

/** A sample in the words and with the settings of this workshop. */
export async function previewSample(sample: Sample): Promise<DrawnMail> {
  const workshop = await readWorkshop();
  const setting = sampleSetting(sample, workshopPart(workshop), config.appUrl);
  return { ...(await drawLetter(writeLetter(sample.content, setting), setting)), ...senderOf(workshop) };
}
