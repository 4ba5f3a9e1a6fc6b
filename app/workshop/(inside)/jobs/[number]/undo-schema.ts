import { z } from 'zod';
import { neededText } from '@/lib/jobs/rules/typed-text';

export const undoForm = z.object({ reason: neededText('what happened, in words for the customer', 500) });
