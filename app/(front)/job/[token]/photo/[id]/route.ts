import { nothingHere, servePhoto } from '@/app/serve-file';
import { jobOfToken } from '../../open-job';

type Context = { params: Promise<{ token: string; id: string }> };

/** A photo of this job only; ?size=thumb gives the small one. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { token, id } = await params;
  const job = await jobOfToken(token);
  const photo = job?.photos.find((each) => each.id === id);
  if (!photo) return nothingHere();
  return servePhoto(request, photo);
}
