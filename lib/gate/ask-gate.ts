import { isOwnOrigin } from './rules/origin';
import { PHOTO_ADDRESS } from './rules/photo-address';
import { readsWithoutScript, readsWithScript, type SentFields } from './rules/sent-arguments';

export type GateAnswer = { opens: true } | { opens: false; status: number; sentence: string };

const OPENS: GateAnswer = { opens: true };
const READS = ['GET', 'HEAD'];
/** What any address may be asked with; a photo that goes ahead of its form is put to one address of its own. */
export const METHODS = [...READS, 'POST'];

/**
 * What is asked of every request before any page sees it: a known method; for one that may change something, a page of
 * ours as its origin (ASVS 5.0, 3.5.1 and 3.5.3); for a form, a body that can be read. Next answers each of these with a
 * bare error of the server (16.4: a foreign origin, a broken form, an argument that leads nowhere), which would count as
 * our fault and fill the log with other people's noise.
 *
 * `request` is a copy: its body is read here.
 */
export async function askGate(request: Request, appUrl: string): Promise<GateAnswer> {
  const { method, headers } = request;
  const isPut = method === 'PUT' && new URL(request.url).pathname === PHOTO_ADDRESS;
  if (!METHODS.includes(method) && !isPut) return shut(405, 'This address does not take that method.');
  if (READS.includes(method)) return OPENS;
  const said = {
    origin: headers.get('origin'),
    site: headers.get('sec-fetch-site'),
    host: headers.get('host'),
  };
  if (!isOwnOrigin(said, appUrl))
    return shut(403, 'This form was sent from another site. Open our page and send it there.');
  return method === 'POST' ? askForm(request) : OPENS;
}

async function askForm(request: Request): Promise<GateAnswer> {
  const actionId = request.headers.get('next-action');
  const isForm = /^multipart\/form-data\b/i.test(request.headers.get('content-type') ?? '');
  if (!isForm) return actionId !== null ? shut(415, 'This address takes forms only.') : OPENS;
  const fields = await readFields(request);
  const reads =
    fields && (actionId === null ? readsWithoutScript(fields) : readsWithScript(actionId, fields));
  return reads
    ? OPENS
    : shut(400, 'This form arrived incomplete. Load the page again and send it once more.');
}

// No browser writes one into the head of a part, and the second reader of the form, busboy in Next 16.4, gives up there.
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const CONTROL = /[\u0000-\u001f\u007f]/;

async function readFields(request: Request): Promise<SentFields | null> {
  try {
    const sent = await request.formData();
    const names = [...sent].flatMap(([name, value]) =>
      typeof value === 'string' ? [name] : [name, value.name],
    );
    if (names.some((name) => CONTROL.test(name))) return null;
    return new Map([...sent].map(([name, value]) => [name, typeof value === 'string' ? value : true]));
  } catch {
    return null;
  }
}

function shut(status: number, sentence: string): GateAnswer {
  return { opens: false, status, sentence };
}
