import { z } from 'zod';

export const secondStepForm = z.object({
  code: z.string('Enter the code from your app').max(40, 'This is longer than any code'),
  /** A way back that is longer than any address is left out, since nobody typed it. */
  goTo: z.string().max(2000).optional().catch(undefined),
});
