import type { Part, Plan } from './requests';
import type { Sent } from './send';

const boundary = '----fz4x7boundary';

/** A plan as the bytes of a request: headers, and the form as a browser would write it, or broken where the plan says so. */
export function bytesOf(plan: Plan, o: { origin: string; cookie: string; address: string }): Sent {
  const headers: Record<string, string> = { ...plan.headers, 'x-forwarded-for': o.address };
  if (o.cookie && !plan.headers['cookie']) headers['cookie'] = o.cookie;
  const sent = { method: plan.method, path: plan.path, headers };
  if (plan.kind === 'open')
    return plan.method === 'GET' || plan.method === 'HEAD'
      ? sent
      : { ...sent, headers: { ...headers, origin: o.origin } };
  headers['origin'] = o.origin;
  if (plan.kind === 'put') return { ...sent, body: plan.parts[0]?.bytes };
  if (plan.kind === 'with script') headers['next-action'] = plan.actionId;
  headers['content-type'] =
    plan.harm === 'type'
      ? 'application/json'
      : plan.harm === 'boundary'
        ? 'multipart/form-data'
        : `multipart/form-data; boundary=${boundary}`;
  if (plan.harm === 'text')
    return {
      ...sent,
      headers: { ...headers, 'content-type': 'text/plain;charset=UTF-8' },
      body: Buffer.from(written(plan.bound)),
    };
  const whole = multipart(plan);
  return { ...sent, body: plan.harm === 'cut' ? whole.subarray(0, Math.max(1, whole.length - 30)) : whole };
}

function multipart(plan: Plan): Buffer {
  const { bound, actionId } = plan;
  const withScript = plan.kind === 'with script';
  // A form always carries its state; where the plan has none it is added, so that the action itself is reached.
  const state = typeof bound.at(-1) === 'object' && bound.at(-1) !== null ? bound : [...bound, {}];
  const root = plan.harm === 'root' ? written(bound) : written(withScript ? [...state, '$K1'] : state);
  const lead: [string, string][] = withScript
    ? [['0', root]]
    : [
        ['$ACTION_REF_1', ''],
        ['$ACTION_1:0', `{"id":"${actionId}","bound":"$@1"}`],
        ['$ACTION_1:1', root],
      ];
  const parts: Part[] = [
    ...lead.map(([name, value]) => ({ name, value })),
    ...plan.parts.map((part) => ({ ...part, name: withScript ? `1_${part.name}` : part.name })),
  ];
  const pieces = parts.flatMap((part) => {
    const file =
      part.file !== undefined ? `; filename="${quoted(part.file)}"\r\nContent-Type: image/jpeg` : '';
    const head = `--${boundary}\r\nContent-Disposition: form-data; name="${quoted(part.name)}"${file}\r\n\r\n`;
    return [Buffer.from(head), part.bytes ?? Buffer.from(part.value), Buffer.from('\r\n')];
  });
  return Buffer.concat([...pieces, Buffer.from(`--${boundary}--\r\n`)]);
}

/** As browsers write names (WHATWG, multipart/form-data). */
function quoted(text: string): string {
  return text.replaceAll('"', '%22').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

function written(value: unknown): string {
  return JSON.stringify(value) ?? 'null';
}
