import { nothingHere, servePhoto } from '@/app/serve-file';
import { quoteOfToken } from '../../open-quote';

type Context = { params: Promise<{ token: string; id: string }> };

/** A photo of this quote only; ?size=thumb gives the small one. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { token, id } = await params;
  const quote = await quoteOfToken(token);
  const photo = quote?.photos.find((each) => each.id === id);
  if (!photo) return nothingHere();
  return servePhoto(request, photo);
}
