import { z } from 'zod';
import { longText, wholeNumber } from './input-parts';

/** The form of the settings about parcels that do not come, about units nobody fetches, and about how long data is kept. */
export const keepingInput = z
  .object({
    parcelRemindDays: wholeNumber('Enter after how many days a customer is reminded, 0 for never', 0, 365),
    parcelOverDays: wholeNumber('Enter after how many days a parcel counts as not coming', 7, 365),
    unclaimedNotices: wholeNumber('Enter how many notices are sent, 0 for none', 0, 12),
    unclaimedAfterDays: wholeNumber('Enter after how many days the first notice is sent', 7, 365),
    unclaimedEveryDays: wholeNumber('Enter how many days lie between notices', 7, 365),
    storageText: longText.pipe(z.string().max(1000, 'Keep this to 1000 characters')),
    keepMonths: wholeNumber('Enter for how many months data is kept, 0 for no end', 0, 600),
  })
  .refine(({ parcelRemindDays, parcelOverDays }) => parcelRemindDays < parcelOverDays, {
    path: ['parcelOverDays'],
    message: 'Enter more days than until the reminder',
  });
