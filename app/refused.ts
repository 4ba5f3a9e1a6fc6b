import type { FormState } from '@/app/ui/forms/form-state';
import type { Refusal } from '@/lib/outcome';

/** A refusal as a form shows it, with what was typed: at its field, or above the form when no field is to blame. */
export function refused(refusal: Refusal, values?: FormState['values']): FormState {
  if (refusal.field) return { errors: { [refusal.field]: [refusal.message] }, values };
  return { message: refusal.message, values };
}
