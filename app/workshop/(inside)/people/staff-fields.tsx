import { RadioGroup } from '@/app/ui/forms/choices';
import { TextField } from '@/app/ui/forms/text-field';
import { permissionTable, ROLE_LABELS, ROLES, type Role } from '@/lib/people/rules/roles';

type Known = { name: string; email: string; initials: string; role: Role };

/** What the workshop knows of a member of staff, for adding and for changing. */
export function StaffFields({ known }: { known?: Known }) {
  return (
    <>
      <TextField name="name" label="Name" autoComplete="off" width="half" defaultValue={known?.name} />
      <TextField
        name="email"
        label="E-mail address"
        hint="They sign in with it."
        type="email"
        autoComplete="off"
        width="half"
        defaultValue={known?.email}
      />
      <TextField
        name="initials"
        label="Initials"
        hint="One to three letters, printed beside bench checks. Left empty, they are taken from the name."
        optional
        mono
        maxLength={3}
        autoComplete="off"
        width="short"
        defaultValue={known?.initials}
      />
      <RadioGroup
        name="role"
        label="What they do"
        defaultValue={known?.role ?? 'bench'}
        choices={ROLES.map((role) => ({ value: role, label: ROLE_LABELS[role], hint: describeRole(role) }))}
      />
    </>
  );
}

function describeRole(role: Role): string {
  const all = permissionTable();
  const labels = all.filter((row) => row.roles.includes(role));
  if (labels.length === all.length) return 'Everything, settings and people too.';
  return `${labels.map((row) => row.label).join('. ')}.`;
}
