import 'server-only';
import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { cache } from 'react';
import { readWorkshop } from '@/app/read-workshop';
import { auth } from '@/lib/people/auth';
import { isRole, may, type Permission, type Role, rolesThatMay } from '@/lib/people/rules/roles';
import { type SessionEnd, type SessionTimes, sessionEnd } from '@/lib/people/rules/session-end';
import { noteUse } from '@/lib/people/sessions';

export type Staff = { id: string; name: string; email: string; initials: string; role: Role };
/** Pages and actions by which somebody turns their second step on; nothing else may say this of itself. */
type Asked = { isSettingUp?: boolean };
/** When a session ends if nothing more is clicked, and how long that is away. */
type Ends = SessionEnd & { secondsLeft: number };
export type SignedIn = Staff & {
  sessionId: string;
  hasSecondStep: boolean;
  hasTemporaryPassword: boolean;
  ends: Ends;
};

/** Who is signed in, or null; asked of the database once for each request, so that an ended session ends at once. */
export const whoIsSignedIn = cache(async (): Promise<SignedIn | null> => {
  const found = await readSession();
  const used = found && (await noteUse(found.session, new Date()));
  if (!used) return null;
  const { id, name, email, initials, twoFactorEnabled, hasTemporaryPassword } = found.user;
  return {
    id,
    name,
    email,
    initials,
    role: found.role,
    sessionId: found.session.id,
    hasSecondStep: twoFactorEnabled === true,
    hasTemporaryPassword,
    ends: endFrom({ ...found.session, updatedAt: used }),
  };
});

/**
 * When the session that asks ends if nothing more is clicked, or null where nobody is signed in. To ask is no use of it, so
 * a page that is left open does not keep anybody signed in.
 */
export async function whenSessionEnds(): Promise<Ends | null> {
  const found = await readSession();
  const ends = found && endFrom(found.session);
  return ends && ends.secondsLeft > 0 ? ends : null;
}

function endFrom(times: SessionTimes): Ends {
  const end = sessionEnd(times);
  return { ...end, secondsLeft: Math.floor((end.at.getTime() - Date.now()) / 1000) };
}

async function readSession() {
  const found = await auth().api.getSession({ headers: await headers() });
  const role = found?.user.role;
  return found?.user.isActive && role !== undefined && isRole(role) ? { ...found, role } : null;
}

/**
 * The signed-in member of staff. Every page and every action of the workshop asks this itself, with the roles that may:
 * `requireStaff('money')`. Signed out leads to the sign-in page and back here afterwards; a temporary
 * password leads to choosing one's own; who lacks the second step where the workshop asks for it is led to turning it on;
 * another role gets a page with status 403 that names the roles it is for.
 */
export async function requireStaff(needed?: Permission, o: Asked = {}): Promise<Staff> {
  const { id, name, email, initials, role } = await requireSignedIn(needed, o);
  return { id, name, email, initials, role };
}

/** The same with the facts of the session, for the account page. */
export async function requireSignedIn(needed?: Permission, o: Asked = {}): Promise<SignedIn> {
  const signedIn = await whoIsSignedIn();
  if (!signedIn) redirect(`/workshop/sign-in?then=${encodeURIComponent(await pathAskedFor())}`);
  if (signedIn.hasTemporaryPassword) redirect('/workshop/sign-in/new-password');
  if (!o.isSettingUp && (await mustTurnSecondStepOn(signedIn))) redirect('/workshop/account#second-step');
  // Not forbidden(): Next 16.4 answers it with an empty body that only script fills.
  if (needed && !may(signedIn.role, needed))
    redirect(`/workshop/not-yours?needs=${rolesThatMay(needed).join(',')}`);
  return signedIn;
}

/** Whether somebody may do nothing here but turn their second step on. */
export async function mustTurnSecondStepOn(who: SignedIn): Promise<boolean> {
  return !who.hasSecondStep && (await readWorkshop()).asksSecondStep;
}

// Pages are not told their own address; proxy.ts writes it into the request.
async function pathAskedFor(): Promise<string> {
  return (await headers()).get('x-path') ?? '/workshop';
}
