import { redirect } from 'next/navigation';
import { readWorkshop } from '@/app/read-workshop';
import { formatClock } from '@/lib/calendar/format';
import { whenSessionEnds, whoIsSignedIn } from '../who';

/** How long the session lasts that asks; with `?stay` after noting a use of it, as opening any page of the workshop does. */
export async function GET(request: Request) {
  const isStaying = new URL(request.url).searchParams.has('stay');
  const ends = isStaying ? (await whoIsSignedIn())?.ends : await whenSessionEnds();
  if (!ends) redirect('/workshop/sign-in');
  const { locale, timeZone: zone } = await readWorkshop();
  const { secondsLeft, isLast, at } = ends;
  return Response.json(
    { secondsLeft, isLast, at: formatClock(at, { locale, zone }) },
    { headers: { 'cache-control': 'no-store' } },
  );
}
