/**
 * What a form's action hands back to the page. All of it is optional: `{}` is the untouched form.
 * - `errors`: per field name the sentences shown at the field and in the summary, first one first.
 * - `values`: what was typed, by field name, so that nothing is lost; never a password.
 * - `message`: one sentence about the form as a whole when no single field is to blame.
 * - `done`: one sentence when the action succeeded and the person stays on the page.
 * - `isDoneBadly`: it succeeded, and what was kept is no good news: a check that failed.
 * - `copied`: words of `done` to be written down by hand, like a password; set apart so that no letter is misread.
 * - `first`: where the person has to go before the form can be sent, in another tab, so that this page keeps what was typed.
 * - `conflict`: somebody else changed the record meanwhile; what changed, and where its present state is.
 *
 * Example: `{ errors: { serial: ['Type the serial number'] }, values: { serial: '' } }`
 */
export type FormState = {
  errors?: Record<string, string[]> | undefined;
  values?: Record<string, string | string[]> | undefined;
  message?: string | undefined;
  done?: string | undefined;
  isDoneBadly?: boolean | undefined;
  copied?: string | undefined;
  first?: { href: string; label: string } | undefined;
  conflict?: FormConflict | undefined;
};

export type FormConflict = {
  message: string;
  changes: string[];
  href?: string | undefined;
};

/**
 * The shape of every action that an ActionForm takes: `(before, formData) => next state`, after what its page binds.
 *
 * Example: `FormAction<[number: string]>` is bound with `.bind(null, job.number)`.
 */
export type FormAction<Bound extends readonly (string | number | null)[] = [], State = FormState> = (
  ...sent: [...bound: Bound, before: State, formData: FormData]
) => Promise<State>;
