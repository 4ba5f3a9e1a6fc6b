import { jobSamples } from './jobs';
import { moneySamples } from './money';
import { priceSamples } from './prices';
import type { Sample } from './sample';
import { warrantySamples } from './warranty';

/** Every way each message can read, in the order of the samples page. */
export const samples: readonly Sample[] = [
  ...jobSamples,
  ...priceSamples,
  ...moneySamples,
  ...warrantySamples,
];
