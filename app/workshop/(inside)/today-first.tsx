import { TextLink } from '@/app/ui/page/text-link';
import type { ToDo } from '@/lib/workshop/first-steps';

/** What an owner does before the first booking; told to them only, and gone once it is done. */
export function FirstStepsPart({ steps, hasJobs }: ToDo) {
  if (steps.length === 0) return null;
  return (
    <section aria-labelledby="first-steps" className="mb-8">
      <h2 id="first-steps">{hasJobs ? 'Still to be filled in' : 'Before the first booking'}</h2>
      <ul className="mt-3 border-t border-edge">
        {steps.map(({ key, label, why, href }) => (
          <li key={key} className="border-b border-rule py-2">
            <TextLink href={href} className="inline-block py-1.5">
              {label}
            </TextLink>
            <p className="text-small">{why}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}
