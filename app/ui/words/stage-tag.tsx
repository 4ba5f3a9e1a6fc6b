import { STAGE_WORDS, type Stage } from '@/lib/jobs/rules/stages';
import { Tag, type TagTone } from '../page/tag';

/** In our hands, waiting elsewhere, done, or off the usual run. */
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

/** The stage of a job, in one word and one shape wherever it is shown, to customers and to the workshop. */
export function StageTag({ stage }: { stage: Stage }) {
  return <Tag tone={TONES[stage]}>{STAGE_WORDS[stage].label}</Tag>;
}
