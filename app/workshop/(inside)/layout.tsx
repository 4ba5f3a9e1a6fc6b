import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { readWorkshop } from '@/app/read-workshop';
import { StaffFrame } from '@/app/ui/frame/staff-frame';
import { requireSignedIn } from '../who';

export const metadata: Metadata = {
  title: { default: 'Workshop', template: '%s – Workshop' },
  robots: { index: false, follow: false },
};

export default async function WorkshopLayout({ children }: { children: ReactNode }) {
  // The first wall only: every page and action below asks again, with the roles it is for.
  const person = await requireSignedIn(undefined, { isSettingUp: true });
  const workshop = await readWorkshop();
  return (
    <StaffFrame
      workshopName={workshop.name}
      personName={person.name}
      role={person.role}
      secondsLeft={person.ends.secondsLeft}
    >
      {children}
    </StaffFrame>
  );
}
