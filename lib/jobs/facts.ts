import { type CheckState, provingState } from '@/lib/bench/rules/checks';
import { owed } from '@/lib/quotes/rules/lines';
import { isFinalRuling, readRuling } from '@/lib/warranty/rules/ruling';
import { type JobRecord, readKind, readStage } from './records';
import type { JobFacts } from './rules/guards';

