import { collectDefaultMetrics, type OpenMetricsContentType, Registry } from 'prom-client';

type Shared = { registry?: Registry<OpenMetricsContentType>; made: object };

// Next bundles its parts apart: they share one registry, in which each name may stand once.
const key = Symbol.for('mendpost.metrics');
if (!Reflect.has(globalThis, key)) Reflect.set(globalThis, key, { made: {} } satisfies Shared);
const shared: Shared = Reflect.get(globalThis, key);

/** All metrics of this process, in the OpenMetrics text form. */
export function registry(): Registry<OpenMetricsContentType> {
  if (!shared.registry) {
    shared.registry = new Registry<OpenMetricsContentType>();
    shared.registry.setContentType(Registry.OPENMETRICS_CONTENT_TYPE);
    // Memory, processor time, event loop lag, garbage collection.
    collectDefaultMetrics({ register: shared.registry });
    // Gauges named as if they were counters, and sums of what is told by type anyway.
    for (const what of ['resources', 'handles', 'requests']) {
      shared.registry.removeSingleMetric(`nodejs_active_${what}_total`);
    }
  }
  return shared.registry;
}

/** The metric of this name, made on first use. */
export function metric<T>(name: string, make: () => T): T {
  if (!Object.hasOwn(shared.made, name)) Reflect.set(shared.made, name, make());
  return Reflect.get(shared.made, name);
}
