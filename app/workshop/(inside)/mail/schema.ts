import { z } from 'zod';
import { typedText } from '@/lib/jobs/rules/typed-text';

export const bounceForm = z.object({
  note: typedText('Copy what the other mail server said', 1000),
});

export const toldForm = z.object({
  note: typedText('Say how they were told', 1000),
});
