import { TextLink } from '@/app/ui/page/text-link';
import { may, type Role } from '@/lib/people/rules/roles';

const WAYS = [
  ['model', 'By model'],
  ['part', 'By part'],
  ['lot', 'By lot'],
  ['supplier', 'By supplier'],
  ['policy', 'By policy'],
] as const;

/** The other ways to look at the same rows; by who did the work only for those who may. */
export function WaysIn({ role }: { role: Role }) {
  const people = may(role, 'returns-people') ? ([['technician', 'By who did the work']] as const) : [];
  return (
    <section aria-labelledby="ways">
      <h2 id="ways">Other ways to look</h2>
      <ul className="grid gap-2">
        {[...WAYS, ...people].map(([grouping, label]) => (
          <li key={grouping}>
            <TextLink href={`/workshop/returns/by/${grouping}`}>{label}</TextLink>
          </li>
        ))}
      </ul>
    </section>
  );
}
