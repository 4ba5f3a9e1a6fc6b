import { countedField } from '@/app/ui/forms/counted-field';
import { addressAnswers } from '@/lib/jobs/rules/booking';

export const contactForm = addressAnswers.extend({ version: countedField });
