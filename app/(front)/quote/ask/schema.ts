import { z } from 'zod';
import { requestForm } from '@/lib/quotes/rules/request-answers';

export const askForm = requestForm.extend({ formKey: z.uuid().optional() });
