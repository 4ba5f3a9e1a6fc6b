import { answerMetrics } from '@/lib/metrics/answer';

/** Metrics for whoever knows METRICS_TOKEN; without that setting there is no such page. */
export function GET(request: Request) {
  return answerMetrics(request.headers.get('authorization'));
}
