import { nothingHere, serveFile } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { readFile } from '@/lib/files/store';
import { photoFile } from '@/lib/jobs/photo-file';
import { rolesThatMay } from '@/lib/people/rules/roles';

type Context = { params: Promise<{ id: string }> };

/** Any photo of any job, for staff; ?size=thumb gives the small one. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  await requireStaff(rolesThatMay('take-in'));
  const { id } = await params;
  const photo = await photoFile(id);
  if (!photo) return nothingHere();
  const isThumb = new URL(request.url).searchParams.get('size') === 'thumb';
  const bytes = await readFile(isThumb ? photo.thumbKey : photo.fileKey);
  return serveFile(bytes, { type: 'image/jpeg', name: `photo-${id}.jpg` });
}
