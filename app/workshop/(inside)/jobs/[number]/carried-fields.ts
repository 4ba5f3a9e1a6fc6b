import { newFormKey } from '@/app/form-key';

/** Hidden fields of a job sheet form: the version seen, and a key that makes a second press harmless. */
export function carriedFields(version: number): Record<string, string | number> {
  return { version, formKey: newFormKey() };
}
