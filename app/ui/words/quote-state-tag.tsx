import { REQUEST_WORDS, type RequestState } from '@/lib/quotes/rules/request-states';
import { Tag, type TagTone } from '../page/tag';

const TONES: Record<RequestState, TagTone> = {
  asked: 'now',
  questioned: 'waiting',
  quoted: 'waiting',
  accepted: 'good',
  booked: 'good',
  declined: 'note',
  lapsed: 'note',
  'turned-down': 'stop',
};

type Props = {
  state: RequestState;
  /** the job that was booked at its price was cancelled */
  isCancelled?: boolean | undefined;
};

/** Where a quote that was asked for stands, in one word and one shape wherever it is shown. */
export function QuoteStateTag({ state, isCancelled }: Props) {
  if (isCancelled) return <Tag tone="stop">Cancelled</Tag>;
  return <Tag tone={TONES[state]}>{REQUEST_WORDS[state].label}</Tag>;
}
