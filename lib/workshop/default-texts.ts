/**
 * Texts a workshop starts from, in plain words, until its owner writes others. They are templates, not legal advice:
 * have them checked by a lawyer who knows the law where you and your customers are. They never shorten what the law
 * gives. Lines that begin with # are headings, with - list entries (lib/workshop/rules/text-blocks.ts).
 */
export const DEFAULT_TERMS = `# What you book
You book a repair at the price on the list, with tax. If your unit needs more, we stop, show you what we found and ask you first. You owe nothing that you did not say yes to.

# If you say no
If you say no to a changed price, your unit comes back as it came, for the return fee you were shown when you booked, if there was one.

# Cancelling
You can cancel free of charge until your unit is here. If you booked as a private customer, the law may give you days to change your mind. Where it does, we say so when you book, and begin before those days are over only if you ask us to. If you then change your mind, you pay for the work done until then, never more than the price you agreed to.

# Posting your unit
- Pack it as the packing slip says. The postage to us is yours.
- Batteries that are swollen, leaking, hot, wet or called back by their maker must not be posted. Ask us first.

# Your recordings and settings
Save what you need before you post the unit. We keep what is on it where we can, but a repair can cost it.

# How long it takes
We promise a day when your unit arrives. Days on which we wait for your answer do not count. If we cannot keep the day, we tell you before it has passed.

# Paying
You pay when your unit is ready. It goes back the working day after the money is here.

# Our warranty
With each repair you get a certificate. It says what is covered, until when, and what is not. It comes on top of your rights by law and takes nothing away from them.

# Units nobody collects
If your unit is ready and we do not hear from you, we write to you more than once. What happens after that follows the law where we are.

# If we disagree
A ruling on a claim can be contested once on your job’s page, and the owner looks again. After that you can still go to a court or an adviser; nothing here stops you.`;

export const DEFAULT_PRIVACY = `# What we keep
Your name, address, e-mail and telephone number, what you told us about your unit, our photos of it, what we did, what you paid, and our messages.

# Why
To repair your unit, to send it back to you, and to stand by the warranty. What you paid is kept because tax law asks for it.

# How long
How many months we keep a request and a closed job is said below. Neither goes while a certificate of yours runs. A booking that you began and did not send is gone after 14 days.

# Who sees it
The people of this workshop, and the carrier, who gets your name and address. We sell nothing to anybody and use no trackers.

# Your say
Ask us what we keep about you, have it put right, or have it erased where no law makes us keep it. If our answer does not satisfy you, you can complain to the data protection authority where you live.`;

export const DEFAULT_PACKING = [
  'Write the job number on a piece of paper and put it in the box, in case the label comes off.',
];
