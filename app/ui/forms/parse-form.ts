import { z } from 'zod';
import type { FormState } from './form-state';
import { handedBack } from './typed-values';

export type ParsedForm<S extends z.ZodType> =
  | { ok: true; data: z.output<S> }
  | { ok: false; state: FormState };

/** Said of what no page of ours sends: a file in place of a text, a choice that was not offered. */
export const NOT_UNDERSTOOD = 'This was not understood. Load the page again and enter it anew';

/**
 * Reads a posted form by a zod schema; on failure gives back the errors and everything that was typed.
 *
 * An empty text field or an empty file field counts as absent, so `z.string()` refuses it and `.optional()`
 * lets it through. Names listed in `arrays` are always arrays (checkbox groups, several files); every other
 * name takes its first non-empty value. Chosen files come back as a list of their names: a browser never
 * refills a file field. Fields whose name contains "password" are never handed back.
 *
 * Example: `parseForm(z.object({ serial: z.string() }), formData)` gives `{ ok: true, data: { serial: 'QF-1' } }`
 * or `{ ok: false, state: { errors: { serial: ['…'] }, values: { serial: '' } } }`.
 */
export function parseForm<S extends z.ZodType>(
  schema: S,
  formData: FormData,
  arrays: readonly string[] = [],
): ParsedForm<S> {
  const raw = new Map<string, unknown>();
  const values = new Map<string, string | string[]>();
  for (const name of new Set(formData.keys())) {
    // React adds its own hidden fields; "__proto__" can only come from a forged post.
    if (name.startsWith('$ACTION_') || name === '__proto__') continue;
    const all = formData.getAll(name).map(readEntry);
    const filled = all.filter((entry) => (entry instanceof File ? entry.size > 0 : entry !== ''));
    raw.set(name, arrays.includes(name) ? filled : filled[0]);
    if (/password/i.test(name)) continue;
    values.set(name, handedBack(all, arrays.includes(name)));
  }
  for (const name of arrays) if (!raw.has(name)) raw.set(name, []);

  // Where a schema has words of its own, those stand (zod 4: schema before parse before locale).
  const result = schema.safeParse(Object.fromEntries(raw), { error: () => NOT_UNDERSTOOD });
  if (result.success) return { ok: true, data: result.data };
  const { formErrors, fieldErrors } = z.flattenError(result.error);
  const errors: Record<string, string[]> = {};
  for (const [name, sentences] of Object.entries<string[] | undefined>(fieldErrors)) {
    if (sentences?.length) errors[name] = sentences;
  }
  return {
    ok: false,
    state: {
      errors,
      values: Object.fromEntries(values),
      message: formErrors.length > 0 ? formErrors.join(' ') : undefined,
    },
  };
}

// A textarea is posted with CRLF line ends while its maxlength counts one; PostgreSQL text refuses NUL.
function readEntry(entry: FormDataEntryValue): FormDataEntryValue {
  if (entry instanceof File) return entry;
  return entry.replaceAll('\r\n', '\n').replaceAll('\0', '');
}
