/**
 * Faults of a text by the rules of OpenMetrics 1.0 ("The OpenMetrics Specification", sections "Text Format" and "Metric
 * Types"), as far as this house uses them; from memory where the section is not named. No fault: an empty list.
 */
export function openMetricsFaults(text: string): string[] {
  const faults: string[] = [];
  const families = new Map<string, Family>();
  if (!text.endsWith('# EOF\n')) faults.push('does not end with "# EOF" and a line feed');
  const lines = text.replace(/\n$/, '').split('\n');
  let current: Family | undefined;
  for (const [index, line] of lines.entries()) {
    if (line === '# EOF') {
      if (index !== lines.length - 1) faults.push(`line ${index + 1}: # EOF before the end`);
      continue;
    }
    const described = descriptor.exec(line);
    if (described) {
      const [, what = '', name = '', rest = ''] = described;
      if (current?.name !== name) {
        if (families.has(name)) faults.push(`${name}: its lines do not stand together`);
        current = { name, type: 'unknown', samples: [], said: new Set() };
        families.set(name, current);
      }
      if (current.said.has(what)) faults.push(`${name}: ${what} twice`);
      if (current.samples.length > 0) faults.push(`${name}: ${what} after a sample`);
      current.said.add(what);
      if (what === 'TYPE') current.type = rest;
      if (what === 'TYPE' && !types.has(rest)) faults.push(`${name}: no type ${rest}`);
      if (what === 'UNIT' && !name.endsWith(`_${rest}`))
        faults.push(`${name}: unit ${rest} is not its suffix`);
      continue;
    }
    const found = sample.exec(line);
    if (!found) {
      faults.push(`line ${index + 1} is neither a sample nor a descriptor`);
      continue;
    }
    const [, name = '', labels = '', value = ''] = found;
    if (!current) faults.push(`${name}: a sample before its type`);
    else if (!name.startsWith(current.name)) faults.push(`${name}: a sample among those of ${current.name}`);
    else
      current.samples.push({
        suffix: name.slice(current.name.length),
        labels,
        value: Number(value.replace('+Inf', 'Infinity')),
      });
  }
  for (const family of families.values()) faults.push(...familyFaults(family));
  return faults;
}

type Sample = { suffix: string; labels: string; value: number };
type Family = { name: string; type: string; samples: Sample[]; said: Set<string> };

const types = new Set([
  'unknown',
  'gauge',
  'counter',
  'stateset',
  'info',
  'histogram',
  'gaugehistogram',
  'summary',
]);
const descriptor = /^# (TYPE|HELP|UNIT) ([a-zA-Z_:][a-zA-Z0-9_:]*) (.*)$/;
const label = '[a-zA-Z_][a-zA-Z0-9_]*="(?:[^"\\\\\\n]|\\\\["\\\\n])*"';
const sample = new RegExp(
  `^([a-zA-Z_:][a-zA-Z0-9_:]*)(\\{(?:${label}(?:,${label})*)?\\})? ([+-]?(?:\\d[\\d.e+-]*|Inf)|NaN)(?: [\\d.]+)?$`,
);

function familyFaults({ name, type, samples }: Family): string[] {
  const faults: string[] = [];
  const seen = new Set<string>();
  for (const { suffix, labels, value } of samples) {
    const at = `${name}${suffix}${labels}`;
    if (seen.has(at)) faults.push(`${at}: twice`);
    seen.add(at);
    if (!(suffixes[type] ?? ['']).includes(suffix)) faults.push(`${at}: a ${type} has no suffix "${suffix}"`);
    if (type !== 'gauge' && !(value >= 0)) faults.push(`${at}: ${value} in a ${type}`);
  }
  if (type === 'counter' && name.endsWith('_total'))
    faults.push(`${name}: the family bears the suffix of its sample`);
  if (type === 'histogram') faults.push(...histogramFaults(name, samples));
  return faults;
}

const suffixes: Record<string, string[]> = {
  counter: ['_total', '_created'],
  gauge: [''],
  histogram: ['_bucket', '_count', '_sum', '_created'],
  info: ['_info'],
};

/** Each set of labels: buckets that never fall, a last one without limit, and that one as its count. */
function histogramFaults(name: string, samples: readonly Sample[]): string[] {
  const faults: string[] = [];
  const buckets = new Map<string, { last: number; whole: number | undefined }>();
  for (const { suffix, labels, value } of samples) {
    if (suffix !== '_bucket') continue;
    const limit = /le="([^"]+)"/.exec(labels)?.[1];
    if (!limit) faults.push(`${name}${labels}: a bucket without le`);
    const rest = labels.replace(/,?le="[^"]*",?/, '');
    const before = buckets.get(rest) ?? { last: 0, whole: undefined };
    if (value < before.last) faults.push(`${name}${labels}: fewer than in the bucket below`);
    buckets.set(rest, { last: value, whole: limit === '+Inf' ? value : before.whole });
  }
  for (const { suffix, labels, value } of samples) {
    if (suffix !== '_count') continue;
    const whole = buckets.get(labels === '' ? '{}' : labels)?.whole;
    if (whole !== value) faults.push(`${name}${labels}: counts ${value}, its last bucket ${whole}`);
  }
  return faults;
}
