import type { TagTone } from '@/app/ui/page/tag';
import type { Stage } from '@/lib/jobs/rules/stages';

const TONES: Record<Stage, TagTone> = {
  booked: 'waiting',
  arrived: 'now',
  assessing: 'now',
  'awaiting-approval': 'waiting',
  'awaiting-parts': 'waiting',
  'on-bench': 'now',
  proving: 'now',
  ready: 'good',
  'sent-back': 'good',
  closed: 'good',
  cancelled: 'stop',
  declined: 'note',
  unclaimed: 'warn',
};

/** The tone of a stage's tag: in our hands, waiting elsewhere, done, or off the usual run. */
export function stageTone(stage: Stage): TagTone {
  return TONES[stage];
}
