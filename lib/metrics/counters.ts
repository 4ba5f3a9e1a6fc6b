import { Counter, Histogram } from 'prom-client';
import { logEvents } from '@/lib/log/events';
import { metric, registry } from './registry';

/** What happened, as the log tells it; what LOG_LEVEL leaves unwritten is counted too. */
export function happenings(): Counter<'event'> {
  const name = 'mendpost_events_total';
  return metric(name, () => {
    const made = new Counter({
      name,
      help: 'What happened, as the log tells it',
      labelNames: ['event'],
      registers: [registry()],
    });
    // What has not happened yet is nought, not absent, so that its first time is seen as a rise.
    for (const event of logEvents) made.inc({ event }, 0);
    return made;
  });
}

/** Seconds from a request's arrival to the end of its answer, by route pattern, method and status. */
export function requestSeconds(): Histogram<'route' | 'method' | 'status'> {
  const name = 'mendpost_request_duration_seconds';
  return metric(
    name,
    () =>
      new Histogram({
        name,
        help: 'Time from a request to the end of its answer',
        labelNames: ['route', 'method', 'status'],
        buckets: [0.01, 0.03, 0.1, 0.3, 1, 3, 10],
        registers: [registry()],
      }),
  );
}
