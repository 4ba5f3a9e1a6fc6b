import { nothingHere, servePhoto } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { photoFile } from '@/lib/jobs/photo-file';

type Context = { params: Promise<{ id: string }> };

/** Any photo of any job, for staff; ?size=thumb gives the small one. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  await requireStaff('take-in');
  const { id } = await params;
  const photo = await photoFile(id);
  return photo ? servePhoto(request, { ...photo, id }) : nothingHere();
}
