import { day } from '@/lib/calendar/day';
import type { Setting } from '../letter';
import { type Sample, sampleJob } from './sample';

/** The setting of a sample in a workshop; the addresses lead to a job that does not exist. */
export function sampleSetting(sample: Sample, workshop: Setting['workshop'], appUrl: string): Setting {
  const isQuote = sample.job?.kind === 'quote';
  return {
    workshop,
    job: { ...sampleJob, ...sample.job },
    ...(sample.withdrawal && {
      withdrawal: {
        rule: 'uk',
        until: day('2026-12-15'),
        isStartAsked: sample.withdrawal === 'asked',
        page: `${appUrl}/withdrawal`,
      },
    }),
    link: sample.hasNoLink
      ? null
      : `${appUrl}/${isQuote ? 'quote' : 'job'}/sample-address-that-does-not-exist`,
    desk: `${appUrl}/workshop/${isQuote ? 'quotes/Q5T8BN3WZ' : 'jobs/J4K7QX290'}`,
  };
}
