import type { RepairFormField } from '@/lib/quotes/rules/repair-form';

/** The fields of the repair form in their order, each under its heading with its place in the form. */
export function FormFields({ fields }: { fields: readonly RepairFormField[] }) {
  return fields.map(({ key, place, heading, entries }) => (
    <section
      key={key}
      aria-labelledby={`field-${key}`}
      className="grid gap-x-6 gap-y-1 border-t border-edge py-3 sm:grid-cols-[14rem_1fr]"
    >
      <h3 id={`field-${key}`} className="m-0 text-body">{`${place}. ${heading}`}</h3>
      <div>
        {entries.map(({ name, text }) => (
          <p key={`${name}: ${text}`} className="m-0 mb-1 written">
            {name === null ? null : <strong>{`${name}: `}</strong>}
            {text}
          </p>
        ))}
      </div>
    </section>
  ));
}
