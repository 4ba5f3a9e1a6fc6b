import { z } from 'zod';
import { addressAnswers } from '@/lib/jobs/rules/address';
import { problemAnswers } from '@/lib/jobs/rules/booking';
import { optionalText, typedText } from '@/lib/jobs/rules/typed-text';

/** What a customer may send of photos with one form, and in all about one quote. */
export const MOST_PHOTOS = 8;
export const MOST_PHOTOS_OF_A_QUOTE = 24;

/** Said of any device; a model's own repairs bring their own. */
export const GENERAL_SYMPTOMS = [
  'It does not switch on',
  'It does not charge',
  'A socket is loose or broken',
  'A control scratches, sticks or does nothing',
  'No sound, or sound drops out',
  'It makes a noise it should not make',
  'The screen or lights do not work',
  'The case is broken',
] as const;

/** What somebody tells who asks for a price. A serial is welcome and not needed. */
export const requestForm = z.object({
  model: z.uuid('Choose a device from the price list').optional(),
  device: typedText('Choose your device from the list, or enter its maker and model', 120),
  serial: optionalText(60),
  symptoms: z.array(z.string().trim().min(1).max(200)).max(20, 'Choose 20 at most').default([]),
  problem: problemAnswers.shape.problem,
  history: problemAnswers.shape.history,
  name: addressAnswers.shape.name,
  email: addressAnswers.shape.email,
  phone: addressAnswers.shape.phone,
});
export type RequestAnswers = z.output<typeof requestForm>;

/** An address as it is compared: 'Ines.Farrow@Example.org ' -> 'ines.farrow@example.org' */
export function emailKey(email: string): string {
  return email.trim().toLowerCase();
}

/** A device as it is compared: ' Marram  TWO' -> 'marram two' */
export function deviceKey(device: string): string {
  return device.trim().replace(/\s+/g, ' ').toLowerCase();
}

export type AskedUnit = { serialKey: string; modelId: string | null; device: string };

/**
 * Whether two requests of one customer are about one unit: the same serial, or none on either and the same device.
 * A serial beside none decides nothing, so that two units of one kind are never made one.
 */
export function isSameUnit(a: AskedUnit, b: AskedUnit): boolean {
  if (a.serialKey !== '' || b.serialKey !== '') return a.serialKey === b.serialKey;
  if (a.modelId !== null && b.modelId !== null) return a.modelId === b.modelId;
  return deviceKey(a.device) === deviceKey(b.device);
}
