import type { RequestState } from './request-states';

/** What happens next, when, and what it costs, for whoever asked for a price; read on their private page. */
export function nextForAsker(o: {
  state: RequestState;
  price: string | null;
  until: string | null;
  /** how long an answer takes: '2 working days' */
  answerWithin: string;
  /** the price is for the inspection alone */
  isInspection?: boolean;
  /** the booking at this price was cancelled */
  isCancelled?: boolean;
}): string {
  if (o.isCancelled)
    return 'nothing by itself. Nothing is owed. The price ended with the booking; ask us for a price again if you still want the repair.';
  switch (o.state) {
    case 'asked':
      return `we answer within ${o.answerWithin}, with a price or a question. Asking is free.`;
    case 'questioned':
      return `you answer below. Then we go on, within ${o.answerWithin}. It costs nothing.`;
    case 'quoted':
      if (o.isInspection)
        return `you say yes or no, by ${o.until}. A yes costs ${o.price} for the inspection, to pay before the unit goes back. The repair gets a price of its own. A no costs nothing.`;
      return `you say yes or no, by ${o.until}. A yes costs ${o.price}, to pay when the repair is done. A no costs nothing.`;
    case 'accepted':
      if (o.isInspection)
        return `you book and post the unit. We inspect it and send you a price for the repair. You pay ${o.price} for the inspection before it goes back, and nothing now.`;
      return `you book the repair and post the unit. You pay ${o.price} when the repair is done, and nothing now.`;
    case 'booked':
      return 'the page of your repair shows where your unit is. What it costs is what you agreed to.';
    case 'declined':
      return 'nothing. Nothing is booked and nothing is owed.';
    case 'lapsed':
      return 'nothing by itself. Write to us below for a new price. Nothing is owed.';
    case 'turned-down':
      return 'nothing. Nothing is booked and nothing is owed. You can ask us about another unit at any time.';
  }
}
