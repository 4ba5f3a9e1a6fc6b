import { expect, test } from 'vitest';
import { config } from '@/lib/config';
import { answerMetrics } from '@/lib/metrics/answer';
import { requestSeconds } from '@/lib/metrics/counters';
import { writeMetrics } from '@/lib/metrics/gauges';
import { resetDatabase, useDatabase } from '@/tests/database';
import { makeQueuedMail } from '@/tests/mail/booking';
import { openMetricsFaults } from './check-open-metrics';

useDatabase();

test('every metric keeps to the rules of OpenMetrics', async () => {
  await resetDatabase();
  requestSeconds().observe({ route: '/job/[token]', method: 'GET', status: '200' }, 0.02);
  requestSeconds().observe({ route: '/prices', method: 'GET', status: '500' }, 4);
  await makeQueuedMail();
  const { text, contentType } = await writeMetrics();
  expect(contentType).toMatch(/^application\/openmetrics-text; version=1\.0\.0; charset=utf-8$/);
  expect(openMetricsFaults(text)).toEqual([]);
  expect(text).toContain('mendpost_mail{state="queued"} 1\n');
  expect(text).toContain('mendpost_mail{state="failed"} 0\n');
  expect(text).toContain('mendpost_jobs{stage="booked"} 1\n');
  expect(text).toMatch(
    /mendpost_request_duration_seconds_count\{route="\/prices",method="GET",status="500"\} 1\n/,
  );
  expect(text).toMatch(/mendpost_mail_oldest_wait_seconds [1-9]/);
  expect(text).toMatch(/mendpost_database_connections\{state="idle"\} \d/);
  expect(text).toMatch(/process_resident_memory_bytes [1-9]/);
  expect(text).toMatch(/nodejs_eventloop_lag_p99_seconds /);
  expect(text).toMatch(/mendpost_build_info\{version="[\d.]+"\} 1\n/);
});

const good = '# HELP a_b A\n# TYPE a_b counter\na_b_total{x="1"} 2\n# EOF\n';

test('a text that keeps to them has no fault', () => expect(openMetricsFaults(good)).toEqual([]));

test.each([
  ['no end', good.replace('# EOF\n', ''), /EOF/],
  ['an end too early', `# EOF\n${good}`, /before the end/],
  ['an empty line', good.replace('# TYPE', '\n# TYPE'), /neither/],
  ['a counter without _total', good.replace('a_b_total', 'a_b'), /no suffix/],
  ['a counter below nought', good.replace('} 2', '} -2'), /-2 in a counter/],
  ['an unknown type', good.replace('counter', 'meter'), /no type/],
  ['a type after its sample', good.replace('# EOF', '# TYPE a_b counter\n# EOF'), /TYPE twice/],
  ['one sample twice', good.replace('# EOF', 'a_b_total{x="1"} 3\n# EOF'), /twice/],
  ['a unit that the name does not bear', good.replace('# TYPE', '# UNIT a_b seconds\n# TYPE'), /suffix/],
  ['a label that is not escaped', good.replace('"1"', '"a"b"'), /neither/],
  [
    'buckets that fall',
    '# TYPE h histogram\nh_bucket{le="1"} 3\nh_bucket{le="+Inf"} 2\nh_sum 1\nh_count 2\n# EOF\n',
    /fewer/,
  ],
  [
    'a count unlike its last bucket',
    '# TYPE h histogram\nh_bucket{le="+Inf"} 2\nh_sum 1\nh_count 3\n# EOF\n',
    /counts/,
  ],
])('%s is a fault', (_name, text, fault) => {
  expect(openMetricsFaults(text).join('\n')).toMatch(fault);
});

test('metrics are for whoever knows the token, and nobody when there is none', async () => {
  const given = config.metricsToken;
  try {
    config.metricsToken = undefined;
    expect((await answerMetrics('Bearer undefined')).status).toBe(404);
    config.metricsToken = 'sixteen-or-longer';
    for (const wrong of [null, '', 'Bearer ', 'Bearer sixteen-or-longe', 'sixteen-or-longer']) {
      const answer = await answerMetrics(wrong);
      expect(answer.status).toBe(401);
      expect(await answer.text()).not.toContain('mendpost_');
    }
    expect((await answerMetrics('Bearer sixteen-or-longer')).status).toBe(200);
  } finally {
    config.metricsToken = given;
  }
});
