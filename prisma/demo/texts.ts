/** Texts of the demonstration workshop, in plain words. A real one has its terms read by somebody who knows its law. */

export const TERMS = `# What you book
You book a repair at the price on the list. The price is with tax. If your unit needs more, we stop, show you what we found and ask you first. You owe nothing that you did not say yes to.

# If you say no
If you decline a changed price, your unit comes back as it came, for the return fee. The return fee is on our price list.

# Cancelling
You can cancel free of charge until your unit is here. If you booked from home as a private customer, the law may give you 14 days to change your mind. We begin before those days are over only if you ask us to; there is a box for it when you book. If you then change your mind, you pay for the work done until then, never more than the price you agreed to.

# Posting your unit
- Pack it as the packing slip says. The postage to us is yours.
- Damage on the way to us is a matter between you and your carrier. We photograph every parcel that arrives broken.
- Batteries that are swollen, leaking, hot, wet or called back by their maker must not be posted. Ask us first.

# Your recordings and settings
Save what you need before you post the unit. We keep what is on it where we can, but a repair can cost it, and we cannot bring it back.

# How long it takes
We promise a day when your unit arrives. Days on which we wait for your answer do not count. If we cannot keep the day, we tell you before it has passed.

# Paying
You pay when your unit is ready. It goes back the working day after the money is here.

# Our warranty
With each repair you get a certificate. It says what is covered, until when, and what is not. It comes on top of your rights by law and takes nothing away from them.

# Units nobody collects
If your unit is ready and we do not hear from you, we write to you, more than once, over at least three months. What happens after that follows the law; we do not sell a unit to pay a small bill.

# If we disagree
Write to Rowan Alder, who owns the workshop. A ruling on a claim can be contested once on your job’s page, and somebody else looks at your unit again. After that you can still go to a court or an adviser; nothing here stops you.`;

export const PRIVACY = `# What we keep
Your name, address, e-mail and telephone number, what you told us about your unit, our photos of it, what we did, what you paid, and our messages.

# Why
To repair your unit, to send it back to you, and to stand by the warranty. Invoices are kept because tax law asks for it.

# How long
How many months a request and a closed job are kept is said below. Invoices are kept six years. A booking that you began and did not send is gone after 14 days.

# Who sees it
The three of us, and the carrier, who gets your name and address. We sell nothing to anybody and use no trackers.

# Your say
Ask us what we keep about you, have it put right, or have it erased where no law makes us keep it. Write to bench@quayandalder.example.org. If our answer does not satisfy you, you can complain to the data protection authority where you live.`;

export const PAYMENT =
  'Bank transfer to Quay & Alder, sort code 00-00-00, account 00000000, or by card on the telephone, 01632 960142, on working days from 9 to 5.';

export const PACKING = [
  'Write the job number on a piece of paper and put it in the box, in case the label comes off.',
  'Plugs, cards and cables that you did not tell us about get lost: leave them at home.',
];
