import { db } from '@/lib/db/client';
import { markOf } from '@/lib/shown-row';
import { isRole, type Role } from './rules/roles';
import { stillCounts } from './sessions';
import { STAFF_FIELDS } from './staff-input';

export type StaffRow = {
  id: string;
  name: string;
  email: string;
  initials: string;
  role: Role;
  isActive: boolean;
  hasSecondStep: boolean;
  /** start of the newest session that still counts */
  signedInSince: Date | null;
};

function staffSelect(now: Date) {
  return {
    id: true,
    name: true,
    email: true,
    initials: true,
    role: true,
    isActive: true,
    twoFactorEnabled: true,
    sessions: {
      where: stillCounts(now),
      select: { createdAt: true },
      orderBy: { createdAt: 'desc' },
      take: 1,
    },
  } as const;
}

/** All staff, active ones first, by name. `now` is the machine's own time, as sessions are dated. */
export async function listStaff(now: Date): Promise<StaffRow[]> {
  const rows = await db.user.findMany({ select: staffSelect(now) });
  const staff = rows.map(toStaffRow);
  return staff.sort((a, b) => Number(b.isActive) - Number(a.isActive) || a.name.localeCompare(b.name));
}

export async function readStaff(id: string, now: Date): Promise<(StaffRow & { mark: string }) | null> {
  const row = await db.user.findUnique({ where: { id }, select: staffSelect(now) });
  return row && { ...toStaffRow(row), mark: markOf(STAFF_FIELDS, row) };
}

function toStaffRow(row: {
  id: string;
  name: string;
  email: string;
  initials: string;
  role: string;
  isActive: boolean;
  twoFactorEnabled: boolean | null;
  sessions: { createdAt: Date }[];
}): StaffRow {
  const { role, twoFactorEnabled, sessions, ...rest } = row;
  return {
    ...rest,
    role: isRole(role) ? role : 'front',
    hasSecondStep: twoFactorEnabled === true,
    signedInSince: sessions[0]?.createdAt ?? null,
  };
}
