/**
 * Who may do what. Glossary:
 * - role: what a member of staff is here for; everybody has exactly one.
 * - permission: one kind of work; pages and actions ask for a permission, never for a role by name.
 * - second look: the owner's agreement to a ruling other than covered.
 */
export const ROLES = ['front', 'bench', 'owner'] as const;
export type Role = (typeof ROLES)[number];

/** One row for each permission. Common practice of small workshops, no source; the second look is the owner's alone. */
const PERMISSIONS = {
  'take-in': { roles: ['front', 'bench', 'owner'], label: 'Take in parcels and write to customers' },
  bench: { roles: ['bench', 'owner'], label: 'Record findings, work, parts and readings' },
  money: { roles: ['front', 'owner'], label: 'Issue quotes, record payments and returns of money' },
  dispatch: { roles: ['front', 'bench', 'owner'], label: 'Send units back' },
  mail: { roles: ['front', 'owner'], label: 'Read and resend mail' },
  'rule-claim': { roles: ['bench', 'owner'], label: 'Inspect returned units and propose rulings' },
  'second-look': { roles: ['owner'], label: 'Agree to a ruling other than covered' },
  recall: { roles: ['owner'], label: 'Stop a lot of parts and write to everybody who has one' },
  returns: { roles: ['bench', 'owner'], label: 'See what comes back, by repair, part and lot' },
  'returns-cost': { roles: ['owner'], label: 'See what warranty costs and what to add to a price' },
  'returns-people': { roles: ['owner'], label: 'See what comes back by who did the work' },
  catalogue: { roles: ['owner'], label: 'Change models, repairs, prices and check sheets' },
  people: { roles: ['owner'], label: 'Add staff and change what they may do' },
  'personal-data': { roles: ['owner'], label: 'Hand out and remove people’s data' },
  settings: { roles: ['owner'], label: 'Change the workshop’s details and texts' },
} as const satisfies Record<string, { roles: readonly Role[]; label: string }>;

export type Permission = keyof typeof PERMISSIONS;

export const ROLE_LABELS: Record<Role, string> = { front: 'Front desk', bench: 'Bench', owner: 'Owner' };

export function isRole(text: string): text is Role {
  return ROLES.some((role) => role === text);
}

/** As whom somebody of this role acts on a job: some moves are the owner's alone (`lib/jobs/rules/stages.ts`). */
export function actorKind(role: Role): 'owner' | 'staff' {
  return role === 'owner' ? 'owner' : 'staff';
}

/** Whether a role has a permission: may('bench', 'money') is false. */
export function may(role: Role, permission: Permission): boolean {
  return rolesThatMay(permission).includes(role);
}

/** The roles that have a permission: rolesThatMay('money') is front and owner. */
export function rolesThatMay(permission: Permission): readonly Role[] {
  return PERMISSIONS[permission].roles;
}

/** Every permission with its roles and the words for it, in the order of a job's way through the house. */
export function permissionTable(): { permission: Permission; label: string; roles: readonly Role[] }[] {
  return Object.entries(PERMISSIONS).map(([permission, { roles, label }]) => ({
    permission: permission as Permission,
    label,
    roles,
  }));
}
