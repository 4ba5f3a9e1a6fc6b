import { z } from 'zod';

export const startForm = z.object({ repair: z.uuid('Choose a repair from the price list') });
